using Refettle.Bench.Threads;

namespace Refettle.Bench.Engagement;

/// <summary>How deep a bolt must reach into soft metal so that the bolt breaks before the thread strips.</summary>
public static class ThreadEngagement
{
    /// <summary>Least bolt diameter of 6g and greatest pitch diameter of 6H, mm. From memory of ISO 965-2.</summary>
    private static readonly (string Thread, double LeastBolt, double MostNut)[] Limits =
        [("M6", 5.794, 5.500), ("M8", 7.760, 7.348), ("M10", 9.732, 9.206), ("M12", 11.701, 11.063)];

    private static readonly Input<string> Class = ThreadInputs.Class.Optional();
    private static readonly Input<double> Load = Inputs.Quantity("load",
        "load to hold; the bolt's breaking load is taken when a class is given instead", Units.Newton, 10, 5_000_000).Optional();
    private static readonly Input<double> Shear = Inputs.Quantity("shear",
        "shear strength of the tapped metal; often taken as 0.6 of its tensile strength", Units.Megapascal, 10, 1000);
    private static readonly Input<double> Bolt = Inputs.Quantity("bolt-diameter",
        "least outer diameter of the bolt's thread; M6, M8, M10, M12 have 6g built in, from memory of ISO 965-2", Units.Millimetre, 1,
        45).Optional();
    private static readonly Input<double> Nut = Inputs.Quantity("nut-pitch-diameter",
        "greatest pitch diameter of the tapped thread; 6H built in likewise", Units.Millimetre, 1, 45).Optional();

    public static BenchNumber Number { get; } = new()
    {
        Name = "engagement",
        Says = "Least thread engagement in soft metal",
        Room = "Engagement",
        Formula = "L = F / (A τ); A = π/P · d (P/2 + (d − D2)/√3) per mm",
        Source = "FED-STD-H28 and NSTS 08307A appendix A form; checked against an example of a handbook of bolted joints",
        Uncertainty = "Depends on which limit diameters are used: they are stated. A worn or corroded thread holds less; the rule of thumb is 2 d in aluminium, 1 d in steel (from memory).",
        Inputs = [ThreadInputs.Thread, Class, Load, Shear, Bolt, Nut],
        Example = "thread=M8 class=8.8 shear=120MPa",
        Work = Work,
    };

    /// <summary>Area that shears in the tapped thread for each mm of engagement, in mm². Bolt diameter more than D2 − 0.866 P.</summary>
    public static double ShearAreaSquareMillimetresPerMillimetre(
        double pitchMillimetres, double boltDiameterMillimetres, double nutPitchDiameterMillimetres) =>
        Math.PI / pitchMillimetres * boltDiameterMillimetres * (pitchMillimetres / 2
            + (boltDiameterMillimetres - nutPitchDiameterMillimetres) / Math.Sqrt(3));

    private static Result<Outcome> Work(Given given)
    {
        var thread = given.Of(ThreadInputs.Thread);
        var load = LoadNewtons(given, thread);
        var diameters = Diameters(given, thread);
        if (!load.IsGood || !diameters.IsGood)
            return Result<Outcome>.Bad(load.Faults.Concat(diameters.Faults));
        var (bolt, nut) = diameters.Value;
        var area = ShearAreaSquareMillimetresPerMillimetre(thread.PitchMillimetres, bolt, nut);
        var length = load.Value / (area * given.Of(Shear));
        return Outcome.Of(
            new("engagement", length, Units.Millimetre),
            new("in bolt diameters", length / thread.DiameterMillimetres, Units.One),
            new("load", load.Value, Units.Newton),
            new("least bolt diameter used", bolt, Units.Millimetre),
            new("greatest nut pitch diameter used", nut, Units.Millimetre));
    }

    private static Result<double> LoadNewtons(Given given, ScrewThread thread)
    {
        if (given.Maybe(Load) is { } load)
            return Result<double>.Good(load);
        if (!given.Has(Class))
            return Result<double>.Bad(new Fault("class", "neither class nor load is given", "Give the bolt's class, or the load to hold"));
        var grade = FastenerClass.Read("class", given.Of(Class), thread);
        return grade.IsGood
            ? Result<double>.Good(thread.StressAreaSquareMillimetres * grade.Value.UltimateMegapascals)
            : Result<double>.Bad(grade.Faults);
    }

    private static Result<(double Bolt, double Nut)> Diameters(Given given, ScrewThread thread)
    {
        var row = Array.Find(Limits, limit => limit.Thread == thread.Designation);
        var (bolt, nut) = (given.Maybe(Bolt) ?? row.LeastBolt, given.Maybe(Nut) ?? row.MostNut);
        if (bolt <= 0 || nut <= 0)
            return Bad("bolt-diameter", $"no limits are built in for {thread}",
                "Give bolt-diameter and nut-pitch-diameter from a thread table");
        return bolt <= thread.DiameterMillimetres && nut < bolt && nut > thread.MinorDiameterMillimetres
            ? Result<(double, double)>.Good((bolt, nut))
            : Bad("bolt-diameter", $"{Measure.Figure(bolt)} and {Measure.Figure(nut)} mm do not mesh as {thread}",
                $"The bolt is at most {Measure.Figure(thread.DiameterMillimetres)} mm, the pitch diameter between {Measure.Figure(thread.MinorDiameterMillimetres)} mm and the bolt's");
    }

    private static Result<(double, double)> Bad(string place, string found, string mend) =>
        Result<(double, double)>.Bad(new Fault(place, found, mend));
}
