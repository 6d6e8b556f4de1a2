namespace Refettle.Access;

/// <summary>A step in the words of the way back: what was taken off is fitted, what was undone is closed.</summary>
internal static class PuttingBack
{
    public static string Says(Step step, CarStanding standing) => step.Fact.Kind switch
    {
        FactKind.Off => $"Fit: {Wording.NameOf(step.Fact, standing)}",
        FactKind.Open when standing.Joints[step.Fact.Subject] is { Count: > 1 } joint =>
            $"Close {joint.Count} × {Wording.NameOf(step.Fact, standing)}",
        FactKind.Open => $"Close: {Wording.NameOf(step.Fact, standing)}",
        FactKind.State => Undoing.Says(Wording.NameOf(step.Fact, standing)),
        _ => $"Close up: {Wording.NameOf(step.Fact, standing)}",
    };
}
