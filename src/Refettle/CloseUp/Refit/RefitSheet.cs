using Refettle.Timeline.Network;

namespace Refettle.CloseUp.Refit;

/// <summary>How the car goes back together from where it stands: every step in an order that works,
/// what the strip remembers of it, and what is checked at the end.</summary>
/// <param name="Leftover">Bags that are not empty and belong to no step of the sheet: something of theirs was
/// forgotten, or left out on purpose.</param>
/// <param name="Bleeding">What was opened of the hydraulics, open still or not, and was neither bled nor filled since.</param>
/// <param name="Checks">What is done once everything is on, in order.</param>
public sealed record RefitSheet(ValueList<RefitStep> Steps, ValueList<Bag> Leftover, ValueList<Joint> Bleeding, ValueList<EndCheck> Checks);

/// <summary>One step of the way back.</summary>
/// <param name="Fact">What it takes back: <c>off(x)</c> is fitted, <c>open(x)</c> closed, a state undone. A stance is taken.</param>
/// <param name="Side">Of the part, or of all parts of the joint.</param>
/// <param name="Stance">The stance to be in; null when any will do.</param>
/// <param name="Card">How to tighten a joint; null for other steps, and for joints that nobody tightens.</param>
/// <param name="Remembers">What the log says of taking it off, and what was noted of it.</param>
/// <param name="Bags">Where its small parts are.</param>
/// <param name="LastLooks">What it closes off: look once more, and photograph.</param>
/// <param name="Origin">Of its minutes.</param>
public sealed record RefitStep(
    Fact Fact, string Says, Side Side, string Place, string? Stance, Minutes Takes, Origin Origin, ClosingCard? Card,
    ValueList<Remembered> Remembers,
    ValueList<Photo> Photos, ValueList<Bag> Bags, ValueList<string> Cautions, ValueList<Look> LastLooks)
{
    /// <summary>Parts that are not here, by identifier: before they are it cannot be begun.</summary>
    public ValueList<string> WaitsFor { get; init; } = [];
}

/// <summary>A line of the log that helps at refit.</summary>
public sealed record Remembered(DateTimeOffset At, string Device, string Says);

/// <summary>A space that a step closes off.</summary>
/// <param name="Bags">Bags that belong to things inside, and are not empty.</param>
/// <param name="IsPhotographed">Whether a photo of the space is in the log.</param>
public sealed record Look(string Space, string Name, ValueList<Bag> Bags, bool IsPhotographed);

/// <summary>Something that is checked once everything is on.</summary>
public sealed record EndCheck(string Id, string Says, Minutes Takes, Origin Origin, ValueList<string> Cautions)
{
    /// <summary>What is handed in.</summary>
    public ValueList<Waste> Waste { get; init; } = [];

    /// <summary>All that it checks is closed; waste is handed in at any time.</summary>
    public bool IsReady { get; init; }
}
