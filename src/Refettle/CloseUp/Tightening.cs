namespace Refettle.CloseUp;

/// <summary>How far a joint was tightened.</summary>
public enum Tightness
{
    /// <summary>Seated, so that it can be moved to its final place; not torqued.</summary>
    Snug,

    Torqued,
}

/// <summary>One tightening as it was recorded.</summary>
/// <param name="Stance">How the car stood; null when not said.</param>
/// <param name="Torque">Reading or setting; null when snug or not said.</param>
/// <param name="Instrument">The wrench; null when not said.</param>
/// <param name="By">Who; null when not said.</param>
public sealed record Tightening(string Joint, Tightness How, string? Stance, NewtonMetres? Torque = null, string? Instrument = null, string? By = null);
