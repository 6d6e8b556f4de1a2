using System.Text.Json;
using System.Text.Json.Serialization;

namespace Refettle.Bench;

/// <summary>What a unit measures. Units of one dimension convert into each other.</summary>
public enum Dimension
{
    Number,
    Share,
    Length,
    Area,
    Volume,
    Mass,
    Time,
    Force,
    Torque,
    Pressure,
    SpringRate,
    Angle,
    AnglePerLength,
    Temperature,
    TemperatureStep,
    Frequency,
    Energy,
    Spreading,
}

/// <summary>A unit of measure: base value = value · <see cref="Factor"/> + <see cref="Offset"/>.</summary>
/// <param name="Symbol">How it is written in answers; unique, empty for a bare number.</param>
/// <param name="Factor">Size in the dimension's base unit (the one with factor 1), more than 0.</param>
/// <param name="Offset">Shift of the zero point in the base unit; not 0 for temperatures only.</param>
[JsonConverter(typeof(SymbolConverter))]
public sealed record Unit(Dimension Dimension, string Symbol, double Factor, double Offset = 0)
{
    /// <summary>Other spellings that are read, besides the symbol.</summary>
    internal ValueList<string> Spellings { get; init; } = [];

    /// <summary>Changes a value of this unit into another of the same dimension.</summary>
    /// <exception cref="InvalidOperationException">The other unit measures something else.</exception>
    public double To(Unit other, double value)
    {
        if (Dimension != other.Dimension)
            throw new InvalidOperationException($"{Symbol} measures {Dimension}, {other.Symbol} measures {other.Dimension}.");
        return other == this ? value : (value * Factor + Offset - other.Offset) / other.Factor;
    }

    public override string ToString() => Symbol;

    private sealed class SymbolConverter : JsonConverter<Unit>
    {
        public override Unit Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            Units.Find(reader.GetString() ?? "") ?? throw new JsonException("A unit is written by its symbol: N·m.");

        public override void Write(Utf8JsonWriter writer, Unit value, JsonSerializerOptions options) =>
            writer.WriteStringValue(value.Symbol);
    }
}
