namespace Refettle.Bench.Heat;

/// <summary>Whether a locking nut survived heat or cold.</summary>
public static class InsertNut
{
    private static readonly Input<string> Kind = Inputs.Choice("kind", "how the nut locks", "insert", "all-metal");
    private static readonly Input<double> Reached =
        Inputs.Quantity("reached", "hottest or coldest that the nut got", Units.Celsius, -100, 1500);

    public static BenchNumber Number { get; } = new()
    {
        Name = "insert-nut",
        Says = "Whether a locking nut that was heated may be used again",
        Room = "Heat",
        Formula = "−50 °C ≤ reached ≤ 120 °C with a non-metallic insert, 150 °C all metal",
        Source = "ISO 2320 scope. That a nut past it is scrap follows from this",
        Uncertainty = "The limit is for service; a nut within it may still be worn out. New locking nuts at each refit are common practice.",
        Inputs = [Kind, Reached],
        Example = "kind=insert reached=200C",
        Work = Work,
    };

    /// <summary>Highest service temperature in °C.</summary>
    public static double MostCelsius(bool hasInsert) => hasInsert ? 120 : 150;

    private static Result<Outcome> Work(Given given)
    {
        var most = MostCelsius(given.Of(Kind) == "insert");
        return Outcome.Judged(
            [new("least", -50, Units.Celsius), new("most", most, Units.Celsius)],
            given.Of(Reached) >= -50 && given.Of(Reached) <= most ? "within its range" : "scrap");
    }
}
