using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

namespace Refettle;

/// <summary>The one JSON form of the vocabulary: camelCase keys, enums in words, quantities as bare numbers in the unit of
/// their type, facts as <c>off(x)</c>. Used by the log, the pages and <c>--json</c>.</summary>
public static class ExchangeJson
{
    public static JsonSerializerOptions Options { get; } = Make(indented: false);

    public static JsonSerializerOptions Indented { get; } = Make(indented: true);

    /// <summary>Writes what <see cref="Options"/> reads as the same and is shorter: see <see cref="Unsaid"/>.</summary>
    public static JsonSerializerOptions Short { get; } = new(Options)
    { TypeInfoResolver = Options.TypeInfoResolver!.WithAddedModifier(Unsaid.LeaveOut) };

    private static JsonSerializerOptions Make(bool indented)
    {
        var options = new JsonSerializerOptions(JsonSerializerDefaults.Web)
        {
            WriteIndented = indented,
            DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
            NumberHandling = JsonNumberHandling.Strict,
            RespectNullableAnnotations = true,
            AllowDuplicateProperties = false,
            TypeInfoResolver = new DefaultJsonTypeInfoResolver { Modifiers = { AskForWhatCannotBeNull, DirectSetters.Use } },
            Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        };
        options.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false));
        options.Converters.Add(new ValueListConverter());
        options.Converters.Add(new FactConverter());
        options.Converters.Add(new QuantityConverter<Minutes>(value => new(value), minutes => minutes.Value));
        options.Converters.Add(new QuantityConverter<Money>(value => new(value), money => money.Amount));
        options.Converters.Add(new QuantityConverter<Kilograms>(value => new(value), mass => mass.Value));
        options.Converters.Add(new QuantityConverter<Millimetres>(value => new(value), length => length.Value));
        options.Converters.Add(new QuantityConverter<NewtonMetres>(value => new(value), torque => torque.Value));
        foreach (var converter in TimeJson.Converters)
            options.Converters.Add(converter);
        options.MakeReadOnly(populateMissingResolver: true);
        return options;
    }

    /// <summary>A record made by its constructor must not be filled up with nulls and zeros where the text says nothing.</summary>
    private static void AskForWhatCannotBeNull(JsonTypeInfo type)
    {
        foreach (var property in type.Properties)
        {
            if (property.Set is not null
                && property.AssociatedParameter is { IsMemberInitializer: false, HasDefaultValue: false, IsNullable: false })
                property.IsRequired = true;
        }
    }

    private sealed class FactConverter : JsonConverter<Fact>
    {
        public override Fact Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            Fact.TryParseTemplate(reader.GetString(), out var fact) ? fact : throw new JsonException("A fact is written off(part).");

        public override void Write(Utf8JsonWriter writer, Fact value, JsonSerializerOptions options) =>
            writer.WriteStringValue(value.ToString());
    }

    private sealed class QuantityConverter<T>(Func<decimal, T> make, Func<T, decimal> value) : JsonConverter<T>
    {
        /// <summary>Most are whole; to read a decimal is long work where code is interpreted.</summary>
        public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            make(reader.TokenType == JsonTokenType.Number && reader.TryGetInt32(out var whole) ? whole : reader.GetDecimal());

        public override void Write(Utf8JsonWriter writer, T quantity, JsonSerializerOptions options) =>
            writer.WriteNumberValue(value(quantity));
    }

    private sealed class ValueListConverter : JsonConverterFactory
    {
        public override bool CanConvert(Type typeToConvert) =>
            typeToConvert.IsGenericType && typeToConvert.GetGenericTypeDefinition() == typeof(ValueList<>);

        public override JsonConverter CreateConverter(Type typeToConvert, JsonSerializerOptions options) =>
            (JsonConverter)Activator.CreateInstance(
                typeof(ListConverter<>).MakeGenericType(typeToConvert.GetGenericArguments()))!;
    }

    private sealed class ListConverter<T> : JsonConverter<ValueList<T>>
    {
        private JsonConverter<T>? _item;

        /// <summary>Item by item: a serializer that is asked for the whole list looks through it first, and so
        /// through each list in it again.</summary>
        public override ValueList<T> Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
        {
            if (reader.TokenType != JsonTokenType.StartArray)
                throw new JsonException("A list is written in brackets.");
            if (!reader.Read() || reader.TokenType == JsonTokenType.EndArray)
                return ValueList<T>.Empty;
            _item ??= (JsonConverter<T>)options.GetConverter(typeof(T));
            var items = new List<T>();
            do
                items.Add(reader.TokenType != JsonTokenType.Null && _item.Read(ref reader, typeof(T), options) is { } item
                    ? item
                    : throw new JsonException("A list holds null."));
            while (reader.Read() && reader.TokenType != JsonTokenType.EndArray);
            return ValueList.Create<T>(items.ToArray());
        }

        public override void Write(Utf8JsonWriter writer, ValueList<T> value, JsonSerializerOptions options)
        {
            writer.WriteStartArray();
            foreach (var item in value)
                JsonSerializer.Serialize(writer, item, options);
            writer.WriteEndArray();
        }
    }
}
