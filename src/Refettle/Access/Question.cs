namespace Refettle.Access;

/// <summary>What should become true, and what must be left alone.</summary>
public sealed record Question
{
    /// <summary>One or more facts; stances may not be goals together.</summary>
    public required ValueList<Fact> Goals { get; init; }

    /// <summary>Parts that stay on the car and whose joints stay closed.</summary>
    public ValueList<string> Without { get; init; } = [];

    public static Question For(params ReadOnlySpan<Fact> goals) => new() { Goals = ValueList.Create(goals) };
}
