namespace Refettle;

/// <summary>A part that was taken off, a joint that was opened or a state that was brought about since the strip began,
/// whether that was taken back or not.</summary>
/// <param name="Since">What was seen to since it last happened, in order: checks and handing in as the timeline
/// names its tasks, <c>check.road-test</c>, and states that were undone, <c>state(brakes-drained)</c>. Only a joint that is closed counts
/// as checked; waste is handed in from when it is there.</param>
public sealed record Disturbed(Fact Fact, ValueList<string> Since)
{
    /// <summary>What the tasks begin with that check a car once it is closed up.</summary>
    public const string Check = "check.";

    /// <summary>The torque of joints with bonded rubber.</summary>
    public const string RideHeight = $"{Check}ride-height";

    /// <summary>The task that hands in waste.</summary>
    public const string HandIn = "hand-in";
}
