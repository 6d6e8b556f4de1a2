namespace Refettle.Bench.Alignment;

/// <summary>A tie rod in rear view, for what a change of camber does to toe.</summary>
/// <param name="SteerArmMillimetres">From the steering axis to the rod's outer joint, lengthwise: ahead of the axle
/// positive, behind it negative, not 0.</param>
public sealed record TieRod(Point Inner, Point Outer, double SteerArmMillimetres)
{
    /// <summary>Toe change in degrees, toe-in positive, to first order: the joint rides along with the
    /// upright, the rod keeps its length.</summary>
    public double ToeChangeDegrees(DoubleWishbone linkage, WheelPosture posture)
    {
        var turn = (posture.CamberDegrees - linkage.StaticCamberDegrees) * Math.PI / 180;
        var carried = posture.LowerOuter + (Outer - linkage.LowerOuter).Lean(turn);
        var pull = Inner.DistanceTo(carried) - Inner.DistanceTo(Outer);
        var sideways = pull * Inner.DistanceTo(carried) / Math.Abs(carried.Out - Inner.Out);
        return Math.Atan(sideways / SteerArmMillimetres) * 180 / Math.PI;
    }
}
