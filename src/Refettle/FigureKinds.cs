namespace Refettle;

/// <summary>How a figure of a data sheet is called, measured and looked up.</summary>
/// <param name="Key">As it is typed.</param>
/// <param name="Says">What it is.</param>
/// <param name="Unit">The unit of its value.</param>
/// <param name="Least">The least that makes sense.</param>
/// <param name="Most">The most that makes sense.</param>
/// <param name="LookFor">The words under which data sheets have it.</param>
public sealed record FigureAsk(FigureKind Kind, string Key, string Says, string Unit, decimal Least, decimal Most, string LookFor);

/// <summary>The figures of a data sheet.</summary>
public static class FigureKinds
{
    public static ValueList<FigureAsk> All { get; } =
    [
        new(FigureKind.At, "at", "temperature that pot life and cure are for", "°C", -10, 80, "the head of the drying table"),
        new(FigureKind.PotLife, "pot-life", "time to use it up once mixed", "min", 1, 10_000, "pot life"),
        new(FigureKind.FlashOff, "flash-off", "time between coats of one session", "min", 0, 1_440, "flash-off, wet on wet"),
        new(FigureKind.Handle, "handle", "until it can be handled", "h", 0, 10_000, "dry to handle, assembly"),
        new(FigureKind.FullCure, "full-cure", "until it is fully cured", "h", 0, 10_000, "full cure, through-hardened"),
        new(FigureKind.LeastAir, "least-air", "coldest air and surface", "°C", -30, 60, "application conditions, lowest temperature"),
        new(FigureKind.MostAir, "most-air", "warmest air and surface", "°C", 0, 80, "application conditions, highest temperature"),
        new(FigureKind.MostHumidity, "most-humidity", "humidity must stay below", "%", 20, 100,
            "application conditions, relative humidity"),
        new(FigureKind.DewMargin, "dew-margin", "surface warmer than the dew point by", "K", 0, 20, "application conditions, dew point"),
        new(FigureKind.WetFilm, "wet", "wet film of a coat", "µm", 1, 5_000, "wet film thickness"),
        new(FigureKind.DryFilm, "dry", "dry film of a coat", "µm", 1, 3_000, "dry film thickness"),
        new(FigureKind.Solids, "solids", "solids by volume, not by weight", "%", 1, 100, "volume solids"),
        new(FigureKind.Coverage, "coverage", "area of a litre in one coat, nothing lost", "m²/L", 0.1m, 100,
            "theoretical coverage, spreading rate"),
        new(FigureKind.Thinner, "thinner", "thinner by volume of paint", "%", 0, 200, "thinning"),
        new(FigureKind.Loss, "loss", "lost to overspray, tools and pot", "%", 0, 90,
            "your own way of working; small parts and spray lose half or more (common practice, no source)"),
        new(FigureKind.Pack, "pack", "what is in one pack as it is sold, hardener with it", "L", 0.01m, 1_000, "pack size, on the tin"),
    ];

    public static FigureAsk Of(FigureKind kind) => All.First(ask => ask.Kind == kind);

    public static FigureAsk? Find(string key) => All.FirstOrDefault(ask => ask.Key == key);

    /// <summary>A figure as it is shown: <c>16 h</c>.</summary>
    public static string Words(SheetFigure figure) => $"{figure.Value:0.##} {Of(figure.Kind).Unit}";
}
