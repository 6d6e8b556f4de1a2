using Refettle.Timeline.Spells;

namespace Refettle.Coating;

/// <summary>Whether a coat was put on in air that its sheet forbids.</summary>
public static class CoatAir
{
    /// <summary>It is recorded as it was, and told of.</summary>
    public static ValueList<Fault> Doubts(CarCoating coating, AppliedCoat coat) =>
        coating.Product(coat.Product) is { } product
            && CoatingDays.Against(coat.Celsius, coat.HumidityPercent, AirNeeds.Of(product), coat.SurfaceCelsius) is { } damp
            ? [new("coat", $"it was put on at {damp}", "Look at it when it has dried: haze, bloom, loose edges.")
                { Severity = Severity.Note }]
            : [];
}
