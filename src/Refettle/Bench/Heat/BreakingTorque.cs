using Refettle.Bench.Threads;

namespace Refettle.Bench.Heat;

/// <summary>The torque at which a bolt twists off.</summary>
public static class BreakingTorque
{
    /// <summary>Least root diameter of the coarse bolt, mm. From memory.</summary>
    private static readonly (string Thread, double LeastRoot)[] Roots = [("M6", 4.596), ("M7", 5.596), ("M8", 6.272), ("M10", 7.938)];

    private static readonly Input<double> Used = Inputs.Quantity("torque", "torque about to be used on it", Units.NewtonMetre, 0.1, 2000)
        .Optional();

    public static BenchNumber Number { get; } = new()
    {
        Name = "breaking-torque",
        Says = "Least torque that twists a bolt off",
        Room = "Heat",
        Formula = "MB = X · Rm · π d3³ / 16",
        Source = "ISO 898-7:1992 for M1 to M10; factor X and least root diameters from memory",
        Uncertainty = "Least value of a new bolt in pure twist. A rusted one breaks earlier by as much as it has lost; the head may round first.",
        Inputs = [ThreadInputs.Thread, ThreadInputs.Class, Used],
        Example = "thread=M8 class=8.8",
        Work = Work,
    };

    /// <summary>MB in N·m.</summary>
    /// <param name="shearMegapascals">X · Rm.</param>
    public static double NewtonMetres(double rootDiameterMillimetres, double shearMegapascals) =>
        shearMegapascals * Math.PI * Math.Pow(rootDiameterMillimetres, 3) / 16 / 1000;

    private static Result<Outcome> Work(Given given)
    {
        var thread = given.Of(ThreadInputs.Thread);
        var grade = FastenerClass.Read("class", given.Of(ThreadInputs.Class), thread);
        if (!grade.IsGood)
            return Result<Outcome>.Bad(grade.Faults);
        if (Array.Find(Roots, row => row.Thread == thread.Designation) is not { LeastRoot: > 0 } root)
            return Outcome.Refuse("thread", $"{thread} is not covered",
                "The standard's rows known here are " + string.Join(", ", Roots.Select(row => row.Thread)));
        var breaks = NewtonMetres(root.LeastRoot, ShearRatio(grade.Value.Name) * grade.Value.UltimateMegapascals);
        return Outcome.Judged(
            [new("breaking torque", breaks, Units.NewtonMetre)],
            verdict: null,
            given.Maybe(Used) is { } used && used >= breaks ? "This torque may twist the bolt off." : null);
    }

    /// <summary>X, shear strength over tensile strength. From memory.</summary>
    private static double ShearRatio(string grade) => grade switch { "8.8" => 0.84, "10.9" => 0.79, _ => 0.75 };
}
