namespace Refettle.Bench.Alignment;

/// <summary>What is held while an arm is changed.</summary>
public enum Held
{
    /// <summary>The lower arm stays where it is; the wheel centre moves a little.</summary>
    LowerArm,

    /// <summary>The height of the wheel centre: the car settles back to its ride height.</summary>
    RideHeight,
}

/// <summary>What is changed, in mm. Pivots move outward when positive.</summary>
/// <param name="WheelUp">Wheel centre above where it was; ride height held only.</param>
public readonly record struct LinkageChange(
    double UpperArm = 0, double LowerArm = 0, double UpperPivot = 0, double LowerPivot = 0, double WheelUp = 0);

/// <summary>Where the linkage stands.</summary>
/// <param name="CamberDegrees">Positive with the top outward.</param>
public readonly record struct WheelPosture(Point LowerOuter, Point UpperOuter, Point WheelCentre, double CamberDegrees);

/// <summary>A double wishbone in rear view: two arms and an upright in one plane.</summary>
/// <remarks>Planar: it knows nothing of caster change, anti-dive or rubber.</remarks>
public sealed record DoubleWishbone(
    Point LowerInner, Point LowerOuter, Point UpperInner, Point UpperOuter, Point WheelCentre, double StaticCamberDegrees)
{
    private const double Precision = 1e-11;

    public double LowerLength => LowerInner.DistanceTo(LowerOuter);

    public double UpperLength => UpperInner.DistanceTo(UpperOuter);

    public double UprightLength => LowerOuter.DistanceTo(UpperOuter);

    /// <summary>Lean of the line through both ball joints: outward positive, so an inward-leaning steering axis is negative.</summary>
    public double UprightLeanDegrees => Lean(LowerOuter, UpperOuter) * 180 / Math.PI;

    /// <summary>Steering axis inclination, top inward positive.</summary>
    public double InclinationDegrees => -UprightLeanDegrees;

    /// <summary>Where the lines of the arms meet; null when they are parallel.</summary>
    public Point? InstantCentre()
    {
        var (lower, upper) = (LowerOuter - LowerInner, UpperOuter - UpperInner);
        var cross = lower.Out * upper.Up - lower.Up * upper.Out;
        if (Math.Abs(cross) < 1e-9 * LowerLength * UpperLength)
            return null;
        var between = UpperInner - LowerInner;
        var along = (between.Out * upper.Up - between.Up * upper.Out) / cross;
        return new(LowerInner.Out + along * lower.Out, LowerInner.Up + along * lower.Up);
    }

    /// <summary>The posture after a change; null when the linkage cannot be put together so.</summary>
    public WheelPosture? After(LinkageChange change, Held held)
    {
        var pivot = LowerInner + new Point(change.LowerPivot, 0);
        var swing = Math.Atan2(LowerOuter.Up - LowerInner.Up, LowerOuter.Out - LowerInner.Out);
        return held == Held.LowerArm ? At(change, pivot, swing) : AtHeight(change, pivot, swing);
    }

    private WheelPosture? At(LinkageChange change, Point pivot, double swing)
    {
        var length = LowerLength + change.LowerArm;
        var lower = pivot + new Point(length * Math.Cos(swing), length * Math.Sin(swing));
        var upperPivot = UpperInner + new Point(change.UpperPivot, 0);
        if (length <= 0 || UpperLength + change.UpperArm <= 0
            || Point.Meet(upperPivot, UpperLength + change.UpperArm, lower, UprightLength, UpperOuter) is not { } upper)
            return null;
        var turn = Lean(lower, upper) - Lean(LowerOuter, UpperOuter);
        return new(lower, upper, lower + (WheelCentre - LowerOuter).Lean(turn), StaticCamberDegrees + turn * 180 / Math.PI);
    }

    /// <summary>Swings the lower arm, by secant steps, until the wheel centre is at its height.</summary>
    private WheelPosture? AtHeight(LinkageChange change, Point pivot, double swing)
    {
        var height = WheelCentre.Up + change.WheelUp;
        var (last, next) = (swing, swing + 1e-4);
        if (At(change, pivot, last) is not { } posture)
            return null;
        for (var round = 0; round < 50 && Math.Abs(posture.WheelCentre.Up - height) > Precision * Math.Max(1, Math.Abs(height)); round++)
        {
            if (At(change, pivot, next) is not { } moved || moved.WheelCentre.Up == posture.WheelCentre.Up)
                return null;
            var slope = (moved.WheelCentre.Up - posture.WheelCentre.Up) / (next - last);
            (last, posture) = (next, moved);
            next += (height - moved.WheelCentre.Up) / slope;
        }

        return Math.Abs(posture.WheelCentre.Up - height) <= 1e-7 ? posture : null;
    }

    private static double Lean(Point lower, Point upper) => Math.Atan2(upper.Out - lower.Out, upper.Up - lower.Up);
}
