namespace Refettle.Bench.Coating;

/// <summary>Wet film, dry film, coverage and quantity of a coating. Solids by volume, not by weight.</summary>
public static class Film
{
    private const string Source = "Volume balance of the film, as on paint makers' sheets";

    private static readonly Input<double> Dry = Inputs.Quantity("dry", "dry film thickness", Units.Micrometre, 1, 3000);
    private static readonly Input<double> Wet = Inputs.Quantity("wet", "wet film thickness", Units.Micrometre, 1, 5000);
    private static readonly Input<double> Solids =
        Inputs.Quantity("solids", "solids by volume, from the data sheet", Units.Percent, 1, 100);
    private static readonly Input<double> Thinner = Inputs.Quantity("thinner", "thinner added, by volume of paint", Units.Percent, 0, 200)
        .Or("0 %", "none added");
    private static readonly Input<double> Area =
        Inputs.Quantity("area", "area to coat, all coats' thickness in dry", Units.SquareMetre, 0.001, 1000);
    private static readonly Input<double> Loss = Inputs.Quantity("loss", "lost to overspray, tools and pot", Units.Percent, 0, 90);

    public static BenchNumber WetFilm { get; } = new()
    {
        Name = "wet-film",
        Says = "Wet film to lay for a dry film",
        Room = "Coating",
        Formula = "WFT = DFT (1 + R) / VS",
        Source = Source,
        Uncertainty = "A wet-film comb reads to a step of 5 to 25 µm; the film must be read at once.",
        Inputs = [Dry, Solids, Thinner],
        Example = "dry=100um solids=62% thinner=10%",
        Work = given => Outcome.Of(
            new BenchValue("wet film", WetMicrometres(given.Of(Dry), given.Of(Solids) / 100, given.Of(Thinner) / 100), Units.Micrometre)),
    };

    public static BenchNumber DryFilm { get; } = new()
    {
        Name = "dry-film",
        Says = "Dry film that a wet film leaves",
        Room = "Coating",
        Formula = "DFT = WFT · VS / (1 + R)",
        Source = Source,
        Uncertainty = "On a blasted surface the first tens of µm fill the profile.",
        Inputs = [Wet, Solids, Thinner],
        Example = "wet=160um solids=62%",
        Work = given => Outcome.Of(
            new BenchValue("dry film", DryMicrometres(given.Of(Wet), given.Of(Solids) / 100, given.Of(Thinner) / 100), Units.Micrometre)),
    };

    public static BenchNumber Coverage { get; } = new()
    {
        Name = "coverage",
        Says = "Area that a litre covers, nothing lost",
        Room = "Coating",
        Formula = "m²/L = 10 · VS% / DFT(µm)",
        Source = Source,
        Uncertainty = "Theoretical: real loss is 10 to 60 % with the tool and the shape (common practice, no source).",
        Inputs = [Solids, Dry],
        Example = "solids=62% dry=100um",
        Work = given => Outcome.Of(
            new BenchValue("coverage", SquareMetresPerLitre(given.Of(Solids) / 100, given.Of(Dry)), Units.SquareMetrePerLitre)),
    };

    public static BenchNumber Quantity { get; } = new()
    {
        Name = "paint-quantity",
        Says = "Paint to have in hand, with loss",
        Room = "Coating",
        Formula = "V = A · DFT / (1000 · VS · (1 − loss))",
        Source = Source,
        Uncertainty = "As good as the guess of the loss: small parts and spray lose half or more (common practice, no source).",
        Inputs = [Area, Dry, Solids, Loss],
        Example = "area=3.5m2 dry=80um solids=55% loss=40%",
        Work = given => Outcome.Of(new BenchValue("paint, unthinned",
            Litres(given.Of(Area), given.Of(Dry), given.Of(Solids) / 100, given.Of(Loss) / 100), Units.Litre)),
    };

    /// <summary>Shares from 0 to 1, solids more than 0.</summary>
    public static double WetMicrometres(double dryMicrometres, double solidsShare, double thinnerShare) =>
        dryMicrometres * (1 + thinnerShare) / solidsShare;

    public static double DryMicrometres(double wetMicrometres, double solidsShare, double thinnerShare) =>
        wetMicrometres * solidsShare / (1 + thinnerShare);

    public static double SquareMetresPerLitre(double solidsShare, double dryMicrometres) => 1000 * solidsShare / dryMicrometres;

    /// <summary>Loss from 0 to below 1.</summary>
    public static double Litres(double squareMetres, double dryMicrometres, double solidsShare, double lossShare) =>
        squareMetres / SquareMetresPerLitre(solidsShare, dryMicrometres) / (1 - lossShare);
}
