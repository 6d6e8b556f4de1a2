namespace Refettle;

/// <summary>What a coating is for.</summary>
public enum CoatingKind
{
    RustConverter,
    Primer,
    EpoxyPrimer,
    ZincPrimer,
    Filler,
    SeamSealer,
    TopCoat,
    ClearCoat,
    StoneChip,
    UnderbodyWax,
    CavityWax,
    Other,
}

/// <summary>What the product's safety sheet names. Where nothing is entered the worst is taken.</summary>
public enum CoatingHazard
{
    /// <summary>Isocyanate in the hardener: two-pack polyurethane and acrylic.</summary>
    Isocyanate,

    /// <summary>Solvent that gives off vapour that can burn.</summary>
    Solvent,

    /// <summary>Acid, as in rust converters and wash primers.</summary>
    Acid,

    /// <summary>Uncured epoxy resin, which makes skin allergic.</summary>
    EpoxyResin,

    /// <summary>The sheet was read and names none of these.</summary>
    NoneNamed,
}

/// <summary>A coating as its data sheet describes it. What the sheet was not asked for is missing, never guessed.</summary>
public sealed record CoatingProduct
{
    /// <summary>What <see cref="Mix"/> says of a product that is not mixed: it has no pot life.</summary>
    public const string OnePack = "one-pack";

    public required string Id { get; init; }

    public required string Name { get; init; }

    public CoatingKind Kind { get; init; } = CoatingKind.Other;

    /// <summary>The sheet the figures stand on, with its issue; null when there is none.</summary>
    public string? Sheet { get; init; }

    /// <summary>How it is mixed, in words; null when not entered.</summary>
    public string? Mix { get; init; }

    /// <summary>What the sheet says to do once the longest time to the next coat is over; null when not entered.</summary>
    public string? WhenLate { get; init; }

    public ValueList<CoatingHazard> Hazards { get; init; } = [];

    /// <summary>When the next coat may go on, a row for each temperature of the sheet, coldest first.</summary>
    public ValueList<RecoatRow> Recoat { get; init; } = [];

    /// <summary>At most one of each kind, in the order of the kinds.</summary>
    public ValueList<SheetFigure> Figures { get; init; } = [];

    /// <summary>Null when it is not entered.</summary>
    public decimal? Figure(FigureKind kind) => Figures.FirstOrDefault(figure => figure.Kind == kind)?.Value;
}

/// <summary>When the next coat may go on after this one.</summary>
/// <param name="Celsius">The temperature that the row is for.</param>
/// <param name="OpensHours">Not before.</param>
/// <param name="ClosesHours">Not after, without abrading; null when not entered or when there is no end.</param>
/// <param name="HasNoEnd">The sheet says that there is no longest time.</param>
public sealed record RecoatRow(decimal Celsius, decimal OpensHours, decimal? ClosesHours, bool HasNoEnd, Origin Origin);

/// <summary>A figure of a data sheet that can be entered.</summary>
public enum FigureKind
{
    At,
    PotLife,
    FlashOff,
    Handle,
    FullCure,
    LeastAir,
    MostAir,
    MostHumidity,
    DewMargin,
    WetFilm,
    DryFilm,
    Solids,
    Coverage,
    Thinner,
    Loss,
    Pack,
}

/// <summary>A figure in the unit of its kind (<see cref="FigureKinds"/>), with who says it.</summary>
public sealed record SheetFigure(FigureKind Kind, decimal Value, Origin Origin);
