using Refettle.Bench.Threads;

namespace Refettle.Bench.Torque;

/// <summary>A torque for another lubricant: same clamp load, other friction.</summary>
public static class LubricantSwap
{
    private static readonly Input<double> From =
        Inputs.Quantity("k-from", "nut factor that the torque was stated for", Units.One, 0.05, 0.6);
    private static readonly Input<double> To =
        Inputs.Quantity("k-to", "nut factor of the thread as it will be fitted", Units.One, 0.05, 0.6);
    private static readonly Input<string> Class = ThreadInputs.Class.Optional();

    public static BenchNumber Number { get; } = new()
    {
        Name = "lubricant-swap",
        Says = "Torque for the same clamp load with another lubricant, and what happens without correction",
        Room = "Torque",
        Formula = "T₂ = T₁ · K₂ / K₁; uncorrected preload F = T₁ / (K₂ d)",
        Source = NutFactor.Source,
        Uncertainty = "Both K are good to a quarter at best. If the maker states the torque for a lubricated thread it stands as it is: ask which it is first.",
        Inputs = [Preload.Torque, ThreadInputs.Thread, From, To, Class],
        Example = "torque=48Nm thread=M10 class=8.8 k-from=0.20 k-to=0.12",
        Work = Work,
    };

    /// <summary>T₂ in N·m that gives the clamp load of T₁.</summary>
    public static double TorqueNewtonMetres(double torqueNewtonMetres, double nutFactorFrom, double nutFactorTo) =>
        torqueNewtonMetres * nutFactorTo / nutFactorFrom;

    private static Result<Outcome> Work(Given given)
    {
        var (torque, thread) = (given.Of(Preload.Torque), given.Of(ThreadInputs.Thread));
        var wanted = NutFactor.PreloadNewtons(torque, given.Of(From), thread.DiameterMillimetres);
        var uncorrected = NutFactor.PreloadNewtons(torque, given.Of(To), thread.DiameterMillimetres);
        ValueList<BenchValue> values =
        [
            new("torque", TorqueNewtonMetres(torque, given.Of(From), given.Of(To)), Units.NewtonMetre),
            new("preload", wanted, Units.Newton),
            new("preload if not corrected", uncorrected, Units.Newton),
        ];
        return given.Has(Class)
            ? Against(FastenerClass.Read("class", given.Of(Class), thread), thread, values, uncorrected)
            : Outcome.Of(values);
    }

    private static Result<Outcome> Against(
        Result<FastenerClass> grade, ScrewThread thread, ValueList<BenchValue> values, double uncorrected)
    {
        if (!grade.IsGood)
            return Result<Outcome>.Bad(grade.Faults);
        var proof = Strength.LoadNewtons(thread, grade.Value.ProofMegapascals);
        return Outcome.Judged([.. values, new("proof load", proof, Units.Newton)], verdict: null,
            uncorrected > proof ? "Uncorrected: " + Preload.ProofCaution(uncorrected, uncorrected, proof) : null);
    }
}
