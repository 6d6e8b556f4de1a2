using Refettle.Bench.Threads;

namespace Refettle.Bench.Heat;

/// <summary>Whether a bolt that was heated may still be credited with its class.</summary>
public static class Tempering
{
    private static readonly Input<double> Reached = Inputs.Quantity("reached", "hottest that the bolt got", Units.Celsius, -50, 1500);

    public static BenchNumber Number { get; } = new()
    {
        Name = "tempering",
        Says = "Whether a heated bolt must be scrapped",
        Room = "Heat",
        Formula = "reached ≥ least tempering temperature of the class → scrap",
        Source = FastenerClass.Source
            + "; service range −50 to +150 °C (ISO 898-1 scope). That a bolt past it is scrap follows from this, it is not written there",
        Uncertainty = "Nobody knows how hot a bolt got under a torch: dull red is already above 500 °C (from memory). When in doubt, scrap.",
        Inputs = [ThreadInputs.Thread, ThreadInputs.Class, Reached],
        Example = "thread=M10 class=10.9 reached=450C",
        Work = Work,
    };

    private static Result<Outcome> Work(Given given)
    {
        var grade = FastenerClass.Read("class", given.Of(ThreadInputs.Class), given.Of(ThreadInputs.Thread));
        if (!grade.IsGood)
            return Result<Outcome>.Bad(grade.Faults);
        var (reached, limit) = (given.Of(Reached), grade.Value.LeastTemperingCelsius);
        return Outcome.Judged(
            [new("least tempering temperature", limit, Units.Celsius)],
            reached >= limit ? "scrap" : "keeps its class",
            reached < limit && reached > 150
                ? "Above the 150 °C of the standard's scope: coatings, lubricant and thread-lock are gone; insert nuts too."
                : null);
    }
}
