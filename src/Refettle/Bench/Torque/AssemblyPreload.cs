using Refettle.Bench.Threads;

namespace Refettle.Bench.Torque;

/// <summary>Preload and torque at which tension and twist together use 90 % of the yield strength.</summary>
public static class AssemblyPreload
{
    private static readonly Input<double> FrictionInput =
        Inputs.Quantity("friction", "friction coefficient, in the thread and under the head", Units.One, 0.04, 0.4);

    public static BenchNumber Number { get; } = new()
    {
        Name = "assembly-preload",
        Says = "Clamp load and torque at 90 % of yield, tension and twist together",
        Room = "Torque",
        Formula = "FM = 0.9 Rp0.2 A0 / √(1 + 3 [1.5 (d2/d0) tan(φ + ρ′)]²); MA = FM [d2/2 · tan(φ + ρ′) + DKm/2 · μ]",
        Source = "VDI 2230 table A1 model; hexagon head and hole sizes from memory of ISO 4014 and ISO 273",
        Uncertainty = "Agrees with printed tables to their rounding, M14 torques print up to 0.6 % lower. An upper limit for sound new bolts, not a target for old ones.",
        Inputs = [ThreadInputs.Thread, ThreadInputs.Class, FrictionInput, HeadBearing.Input],
        Example = "thread=M12x1.25 class=10.9 friction=0.12",
        Work = Work,
    };

    /// <summary>FM in N. Friction 0 to 0.5.</summary>
    public static double PreloadNewtons(ScrewThread thread, double yieldMegapascals, double threadFriction)
    {
        var twist = 1.5 * thread.PitchDiameterMillimetres / thread.StressDiameterMillimetres * Friction.TanOfLeadAndFriction(thread,
            threadFriction);
        return 0.9 * yieldMegapascals * thread.StressAreaSquareMillimetres / Math.Sqrt(1 + 3 * twist * twist);
    }

    private static Result<Outcome> Work(Given given)
    {
        var thread = given.Of(ThreadInputs.Thread);
        var grade = FastenerClass.Read("class", given.Of(ThreadInputs.Class), thread);
        var bearing = HeadBearing.Of(given, thread);
        if (!grade.IsGood || !bearing.IsGood)
            return Result<Outcome>.Bad(grade.Faults.Concat(bearing.Faults));
        var friction = given.Of(FrictionInput);
        var preload = PreloadNewtons(thread, grade.Value.YieldMegapascals, friction);
        var factor = Friction.ExactNutFactor(thread, friction, friction, bearing.Value);
        return Outcome.Of(
            new("preload", preload, Units.Newton),
            new("torque", NutFactor.TorqueNewtonMetres(preload, factor, thread.DiameterMillimetres), Units.NewtonMetre));
    }
}
