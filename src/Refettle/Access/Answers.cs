namespace Refettle.Access;

/// <summary>What still holds a part, on the car as it stands.</summary>
public sealed record HoldsAnswer
{
    public required string Part { get; init; }

    /// <summary>It is off the car already.</summary>
    public bool IsOff { get; init; }

    /// <summary>The closed joints of the part, easiest first.</summary>
    public ValueList<Hold> Joints { get; init; } = [];

    /// <summary>What blocks its way out, joints apart.</summary>
    public ValueList<Fact> InTheWay { get; init; } = [];

    /// <summary>Where to hold it up before the last joint opens; null when nothing is said.</summary>
    public string? Prop { get; init; }
}

/// <summary>One joint that still holds, with its quickest way.</summary>
/// <param name="To">The other parts it holds this one to.</param>
/// <param name="Tool">Null, and no minutes, when no way opens it as the car stands: sparks at what has fuel in it.</param>
/// <param name="Before">What must be true before that way can be used and is not yet.</param>
public sealed record Hold(
    string Joint, string Says, JointKind Kind, int Count, ValueList<string> To, string? Tool, Minutes? Open, ValueList<Fact> Before);

/// <summary>Why a step is in a plan.</summary>
/// <param name="Goals">The goals that need it.</param>
/// <param name="Path">From the step to the nearest goal: each fact is needed by the next.</param>
public sealed record WhyAnswer(Fact Fact, ValueList<Fact> Goals, ValueList<Fact> Path);

/// <summary>What else comes within reach once a plan is carried out.</summary>
public sealed record WithinAnswer(Plan Plan, ValueList<Extra> Extras);

/// <summary>A further goal and what it costs on top.</summary>
/// <param name="Proven">No way to it costs less on top of that plan.</param>
public sealed record Extra(Fact Fact, string Says, Cost Cost, bool Proven);

/// <summary>Another plan for the same goals.</summary>
/// <param name="Instead">Facts of this plan that the best one does not have.</param>
/// <param name="Spares">Facts of the best plan that this one does not need.</param>
/// <param name="OtherWays">Facts done another way, as <c>open(x): way</c>.</param>
public sealed record OtherPlan(Plan Plan, ValueList<Fact> Instead, ValueList<Fact> Spares, ValueList<string> OtherWays);

/// <summary>Two sets of goals beside each other, and done at once.</summary>
/// <param name="Shared">Minutes saved by doing both in one go; null where one of the three has no plan.</param>
public sealed record Comparison(Plan First, Plan Second, Plan Both, Minutes? Shared);
