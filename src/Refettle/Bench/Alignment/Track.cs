namespace Refettle.Bench.Alignment;

/// <summary>Where the tyre stands.</summary>
public static class Track
{
    /// <summary>How far the tyre's foot moves outward, in mm, on this side. The wheel's radius is taken
    /// from the height of its centre.</summary>
    public static double ChangeMillimetres(DoubleWishbone linkage, WheelPosture posture)
    {
        var radius = linkage.WheelCentre.Up / Math.Cos(Radians(linkage.StaticCamberDegrees));
        return posture.WheelCentre.Out - radius * Math.Sin(Radians(posture.CamberDegrees))
            - (linkage.WheelCentre.Out - radius * Math.Sin(Radians(linkage.StaticCamberDegrees)));
    }

    private static double Radians(double degrees) => degrees * Math.PI / 180;
}
