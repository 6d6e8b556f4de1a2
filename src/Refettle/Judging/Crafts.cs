namespace Refettle.Judging;

/// <summary>What can be done for a kind of part at all, and how long it takes where the owner has not
/// said. Common practice, no source.</summary>
/// <param name="CanRefurbish">Whether it can be put right on a home bench.</param>
/// <param name="Work">Own time for that.</param>
/// <param name="InPairs">Whether both sides are done together.</param>
/// <param name="LostWhenOff">Whether it cannot go back on once it has been taken off.</param>
internal sealed record Craft(bool CanRefurbish, Minutes Work, bool InPairs, bool LostWhenOff)
{
    private static readonly Dictionary<string, Craft> Known = new()
    {
        ["damper"] = new(false, new(120), true, false),
        ["ball-joint"] = new(false, new(30), false, false),
        ["tie-rod"] = new(true, new(30), false, false),
        ["bush"] = new(false, new(60), true, false),
        ["boot"] = new(false, new(30), false, false),
        ["bearing"] = new(false, new(60), false, true),
        ["hose"] = new(false, new(20), true, false),
        ["spring"] = new(true, new(90), true, false),
        ["seal"] = new(false, new(20), false, true),
        ["weatherstrip"] = new(true, new(30), false, false),
        ["brake-disc"] = new(true, new(60), true, false),
        ["brake-pad"] = new(false, new(30), true, false),
        ["fastener"] = new(true, new(10), false, false),
        ["panel"] = new(true, new(360), false, false),
    };

    private static readonly Craft Other = new(true, new(120), false, false);

    public static Craft Of(Part part) =>
        ConditionScales.For(part).Select(scale => Known.GetValueOrDefault(scale.Id)).FirstOrDefault(craft => craft is not null) ?? Other;
}

/// <summary>Days until another one is here, where the owner has not said. Common practice, no source.</summary>
internal static class LeadTimes
{
    public static decimal Of(Scarcity scarcity) => scarcity switch { Scarcity.Stocked => 7, _ => 28 };

    public const decimal Outside = 28;
}
