using Refettle.Bench.Threads;

namespace Refettle.Bench.Torque;

/// <summary>The long forms: thread friction and head friction apart. Friction coefficients 0 to 0.5, lengths in mm.</summary>
/// <remarks>Each gives K in T = K d F, so that they can be compared.</remarks>
public static class Friction
{
    /// <summary>Half the flank angle of 60° threads, in radians.</summary>
    private const double HalfFlank = Math.PI / 6;

    /// <summary>Kellermann and Klein, VDI 2230: K d = 0.16 P + 0.58 d2 μG + ½ DKm μK.</summary>
    public static double LinearNutFactor(
        ScrewThread thread, double threadFriction, double headFriction, double frictionDiameterMillimetres) =>
        (0.16 * thread.PitchMillimetres + 0.58 * thread.PitchDiameterMillimetres * threadFriction
            + frictionDiameterMillimetres / 2 * headFriction)
        / thread.DiameterMillimetres;

    /// <summary>Motosh: K d = P/2π + μG rt / cos 30° + μK rn. From memory.</summary>
    public static double MotoshNutFactor(
        ScrewThread thread, double threadFriction, double headFriction, double frictionDiameterMillimetres) =>
        (thread.PitchMillimetres / (2 * Math.PI) + threadFriction * thread.PitchDiameterMillimetres / 2 / Math.Cos(HalfFlank)
            + headFriction * frictionDiameterMillimetres / 2)
        / thread.DiameterMillimetres;

    /// <summary>The screw as an inclined plane: K d = ½ d2 tan(φ + ρ′) + ½ DKm μK.</summary>
    public static double ExactNutFactor(
        ScrewThread thread, double threadFriction, double headFriction, double frictionDiameterMillimetres) =>
        (thread.PitchDiameterMillimetres / 2 * TanOfLeadAndFriction(thread, threadFriction)
            + frictionDiameterMillimetres / 2 * headFriction)
        / thread.DiameterMillimetres;

    /// <summary>NASA TM-106943 eq. 2: K = (dm/2d) (tan λ + μ sec 30°)/(1 − μ tan λ sec 30°) + 0.625 μc.</summary>
    /// <param name="meanDiameterMillimetres">dm, the mean of major and root diameter.</param>
    public static double CollarNutFactor(
        double diameterMillimetres, double meanDiameterMillimetres, double pitchMillimetres, double threadFriction, double collarFriction)
    {
        var (lead, friction) = (pitchMillimetres / (Math.PI * meanDiameterMillimetres), threadFriction / Math.Cos(HalfFlank));
        return meanDiameterMillimetres / (2 * diameterMillimetres) * (lead + friction) / (1 - friction * lead) + 0.625 * collarFriction;
    }

    /// <summary>tan(φ + ρ′) with tan φ = P/(π d2), tan ρ′ = μG / cos 30°.</summary>
    public static double TanOfLeadAndFriction(ScrewThread thread, double threadFriction)
    {
        var lead = thread.PitchMillimetres / (Math.PI * thread.PitchDiameterMillimetres);
        var friction = threadFriction / Math.Cos(HalfFlank);
        return (lead + friction) / (1 - lead * friction);
    }

    /// <summary>ISO 16047, from memory: one coefficient for thread and head from a measured torque and load.</summary>
    public static double TotalFriction(
        ScrewThread thread, double torqueNewtonMetres, double preloadNewtons, double frictionDiameterMillimetres) =>
        (torqueNewtonMetres * 1000 / preloadNewtons - thread.PitchMillimetres / (2 * Math.PI))
        / (0.577 * thread.PitchDiameterMillimetres + 0.5 * frictionDiameterMillimetres);
}
