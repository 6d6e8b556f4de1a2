namespace Refettle.Timeline.Network;

/// <summary>The coats that are planned for a part for which its owner chose none.</summary>
internal static class StandardCoats
{
    /// <summary>Bare steel gets its first coat within so many minutes (common practice, no source).</summary>
    public const int BareMinutes = 8 * 60;

    /// <summary>After the last coat until the part is fitted, where no sheet says so (common practice, no source).</summary>
    public const int HandleMinutes = 48 * 60;

    /// <summary>To mask, mix, put on and clean up, for each coat (common practice, no source).</summary>
    public const int CoatMinutes = 40;

    /// <summary>Two-pack epoxy, then two-pack top coat, from figures that circulate in the trade and on two
    /// data sheets: epoxy recoated from 16 h to 7 days at 20 °C, put on at 15 °C or more below 70 % humidity; top coat at 12 °C or more.
    /// The product's own sheet comes first.</summary>
    public static ValueList<(CoatingProduct Product, int Coats)> EpoxyAndTopCoat { get; } =
    [
        (Product("Epoxy primer", CoatingKind.EpoxyPrimer, 15, [CoatingHazard.EpoxyResin, CoatingHazard.Solvent]) with
            { Recoat = [new(20, 16, 7 * 24, false, Origin.CommonPractice)] }, 1),
        (Product("Top coat", CoatingKind.TopCoat, 12, [CoatingHazard.Isocyanate, CoatingHazard.Solvent]), 1),
    ];

    private static CoatingProduct Product(string name, CoatingKind kind, decimal leastCelsius, ValueList<CoatingHazard> hazards) => new()
    {
        Id = Identifier.From(name),
        Name = name,
        Kind = kind,
        Hazards = hazards,
        Figures = [new(FigureKind.LeastAir, leastCelsius, Origin.CommonPractice), new(FigureKind.MostHumidity, 70, Origin.CommonPractice)],
    };
}
