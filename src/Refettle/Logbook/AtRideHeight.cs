namespace Refettle.Logbook;

/// <summary>When bonded rubber is not wound up by a torque.</summary>
internal static class AtRideHeight
{
    /// <summary>Torqued while the wheels carried the car, or stood at its height on blocks.</summary>
    /// <param name="stance">The one that the car was in; null when none is known.</param>
    public static bool IsSettled(this Tightness how, string? stance) =>
        how == Tightness.Torqued && stance is (Car.AtRideHeight or Car.OnWheels);
}
