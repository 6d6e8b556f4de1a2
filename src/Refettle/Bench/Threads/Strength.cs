namespace Refettle.Bench.Threads;

/// <summary>What a bolt can carry.</summary>
public static class Strength
{
    public static BenchNumber Number { get; } = new()
    {
        Name = "strength",
        Says = "Proof, yield and breaking load of a bolt",
        Room = "Threads",
        Formula = "F = As · S, with the stress area As of the standard (three digits for metric threads)",
        Source = FastenerClass.Source,
        Uncertainty = "Least values of sound, unheated bolts; printed tables differ by up to 0.6 % through rounding. Rust, wear and heat take from it by amounts nobody can read off a head.",
        Inputs = [ThreadInputs.Thread, ThreadInputs.Class],
        Example = "thread=M10 class=8.8",
        Work = Work,
    };

    /// <summary>Load in newtons at which a stress in MPa is reached in the thread.</summary>
    public static double LoadNewtons(ScrewThread thread, double stressMegapascals) => thread.RatedAreaSquareMillimetres * stressMegapascals;

    private static Result<Outcome> Work(Given given)
    {
        var thread = given.Of(ThreadInputs.Thread);
        var grade = FastenerClass.Read("class", given.Of(ThreadInputs.Class), thread);
        return grade.IsGood
            ? Outcome.Of(
                new("proof load", LoadNewtons(thread, grade.Value.ProofMegapascals), Units.Newton),
                new("yield load", LoadNewtons(thread, grade.Value.YieldMegapascals), Units.Newton),
                new("breaking load", LoadNewtons(thread, grade.Value.UltimateMegapascals), Units.Newton))
            : Result<Outcome>.Bad(grade.Faults);
    }
}
