using Refettle.Logbook;

namespace Refettle.CloseUp;

/// <summary>One tightening, with how the car stood then.</summary>
/// <param name="Stance">Null when not known.</param>
public sealed record Tightening(string Joint, Tightness How, string? Stance, NewtonMetres? Torque = null);
