namespace Refettle.Bench.Threads;

/// <summary>The dimensions of a thread's basic profile.</summary>
public static class Geometry
{
    public static BenchNumber Number { get; } = new()
    {
        Name = "thread",
        Says = "Diameters, pitch and stress area of a thread",
        Room = "Threads",
        Formula = "H = √3/2 · P; d2 = d − 0.75 H; d1 = d − 1.25 H; d3 = d1 − H/6; As = π/4 ((d2 + d3)/2)²; inch threads: As = π/4 (D − 9√3/16 · P)²",
        Source = "ISO 68-1, ISO 724, ISO 898-1; NSTS 08307 Rev A appendix A for inch threads. Sizes and pitches from memory of ISO 261 and ASME B1.1",
        Uncertainty = "Basic profile. A real thread is smaller by its tolerance, a rusty one by what is lost.",
        Inputs = [ThreadInputs.Thread],
        Example = "thread=M10x1.25",
        Work = given => Of(given.Of(ThreadInputs.Thread)),
    };

    private static Result<Outcome> Of(ScrewThread thread) => Outcome.Of(
        new("nominal diameter", thread.DiameterMillimetres, Units.Millimetre),
        new("pitch", thread.PitchMillimetres, Units.Millimetre),
        new("pitch diameter d2", thread.PitchDiameterMillimetres, Units.Millimetre),
        new("minor diameter d1", thread.MinorDiameterMillimetres, Units.Millimetre),
        new("root diameter d3", thread.RootDiameterMillimetres, Units.Millimetre),
        new("stress area", thread.StressAreaSquareMillimetres, Units.SquareMillimetre),
        new("lead angle", thread.LeadAngleDegrees, Units.Degree));
}
