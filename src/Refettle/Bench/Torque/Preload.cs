using Refettle.Bench.Threads;

namespace Refettle.Bench.Torque;

/// <summary>Clamp load from a tightening torque.</summary>
public static class Preload
{
    public static Input<double> Torque { get; } = Inputs.Quantity("torque", "tightening torque", Units.NewtonMetre, 0.1, 2000);

    private static readonly Input<string> Class = ThreadInputs.Class.Optional();

    public static BenchNumber Number { get; } = new()
    {
        Name = "preload",
        Says = "Clamp load that a tightening torque gives",
        Room = "Torque",
        Formula = "F = T / (K · d)",
        Source = NutFactor.Source + "; scatter: " + Scatter.Source,
        Uncertainty = "The range is the scatter of single bolts by the tightening method; a wrong K shifts all of it.",
        Inputs = [Torque, ThreadInputs.Thread, Class, NutFactor.Input, Scatter.Input],
        Example = "torque=48Nm thread=M10 class=8.8 k=0.20",
        Work = Work,
    };

    private static Result<Outcome> Work(Given given)
    {
        var thread = given.Of(ThreadInputs.Thread);
        var preload = NutFactor.PreloadNewtons(given.Of(Torque), given.Of(NutFactor.Input), thread.DiameterMillimetres);
        var scatter = Scatter.Share(given.Of(Scatter.Input));
        var value = new BenchValue("preload", preload, Units.Newton, preload * (1 - scatter), preload * (1 + scatter));
        return given.Has(Class) ? Against(FastenerClass.Read("class", given.Of(Class), thread), thread, value) : Outcome.Of(value);
    }

    private static Result<Outcome> Against(Result<FastenerClass> grade, ScrewThread thread, BenchValue preload)
    {
        if (!grade.IsGood)
            return Result<Outcome>.Bad(grade.Faults);
        var proof = Strength.LoadNewtons(thread, grade.Value.ProofMegapascals);
        return Outcome.Judged(
            [preload, new("proof load", proof, Units.Newton), new("share of proof load", preload.Value / proof * 100, Units.Percent)],
            verdict: null,
            ProofCaution(preload.Value, preload.High ?? preload.Value, proof));
    }

    /// <summary>What to say about a preload and the most it may be, both in N, beside the proof load; null when nothing.</summary>
    public static string? ProofCaution(double preloadNewtons, double mostNewtons, double proofNewtons) =>
        preloadNewtons > proofNewtons
            ? $"Above the proof load ({new Measure(proofNewtons, Units.Newton)}): the bolt stretches for good or breaks. Do not tighten so."
        : mostNewtons > proofNewtons ? $"Single bolts may pass the proof load ({new Measure(proofNewtons, Units.Newton)}) by scatter."
        : null;
}
