using Refettle.Access;
using Refettle.Access.Fire;

namespace Refettle.Timeline.Network;

/// <summary>A weld is closed with flame and sparks, whatever it was cut with: nothing that burns may be on the car near it.</summary>
public static class WeldGate
{
    /// <summary>What closes the gate of a weld on a car as it stands; null when it is open, or nothing is welded.</summary>
    public static string? Says(CarStanding standing, Joint? joint) => Says(standing, joint, _ => false);

    /// <summary>Whether a step is undone by welding.</summary>
    internal static bool IsWeld(CarStanding standing, Step step) =>
        step.Fact.Kind == FactKind.Open && standing.Joints[step.Fact.Subject].Kind == JointKind.Weld;

    /// <summary>Says it at every weld that would be closed while something near burns and that no step of the plan takes away.</summary>
    internal static void Close(NetworkDraft draft, CarStanding standing, StripTasks strip, RefitTasks refit) => ClosedSteps.Mark(
        draft, refit,
        (_, step) => step.Fact.Kind == FactKind.Open
            ? Says(standing, standing.Joints[step.Fact.Subject], one => IsTakenAway(strip, one))
            : null,
        step => $"joint {step.Fact.Subject}", "not as planned, its gate is closed", "Name it among the goals: off, or made safe.");

    private static string? Says(CarStanding standing, Joint? joint, Predicate<Burning> isTakenAway)
    {
        if (joint is not { Kind: JointKind.Weld })
            return null;
        var near = FireNeeds.Near(standing, joint.Holds).Where(one => !FireNeeds.IsAway(standing, one) && !isTakenAway(one))
            .Select(one => one.Part.Name).Distinct().Order(StringComparer.Ordinal).ToList();
        return near.Count == 0 ? null : $"Not to be welded yet: {string.Join(", ", near)} near it neither off nor made safe.";
    }

    private static bool IsTakenAway(StripTasks strip, Burning one) =>
        one.Mend is { } mend && (strip.TaskOf(mend) is not null || strip.TaskOf(Fact.Off(one.Part.Id)) is not null);
}
