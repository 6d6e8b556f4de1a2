using System.Text.Json.Serialization;

namespace Refettle.Logbook;

/// <summary>Wheel angles were measured: as found before the strip, or as set. <c>alignment-measured</c></summary>
/// <param name="AsFound">Before anything was changed; false for what was set.</param>
/// <param name="Thrust">Of the rear axle in degrees, positive to the right; null when not measured. The sign of a thrust angle
/// is not defined alike everywhere.</param>
/// <param name="Instrument">Rig or gauge; null when not said.</param>
/// <param name="By">Who; null when not said.</param>
public sealed record AlignmentMeasured(bool AsFound, ValueList<WheelAngles> Wheels, decimal? Thrust, string? Instrument, string? By)
    : Happening
{
    /// <summary>The thrust angle as measured, else by the toe of the rear wheels; null when neither is known.</summary>
    [JsonIgnore]
    public decimal? ThrustRight => Thrust ?? OfRearToe();

    /// <summary>Half of left less right rear toe: toe-in of the left wheel turns it to the right (geometry).</summary>
    public decimal? OfRearToe() => Toe("rl") is { } left && Toe("rr") is { } right ? (left - right) / 2 : null;

    private decimal? Toe(string corner) => Wheels.FirstOrDefault(wheel => wheel.Corner == corner)?.Toe;
}
