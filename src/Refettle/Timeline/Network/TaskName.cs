using Refettle.Access;

namespace Refettle.Timeline.Network;

/// <summary>What a task of several steps is called.</summary>
internal static class TaskName
{
    /// <summary>By its lead, and by every state that it brings about: what is drained, disconnected or let off is
    /// not hidden behind another step.</summary>
    /// <param name="steps">In the order of doing, in words.</param>
    public static string Of(ValueList<Step> steps, Fact lead)
    {
        var named = steps.Where(step => step.Fact == lead || step.Fact.Kind == FactKind.State).ToList();
        var work = steps.Count(step => !PlanOutline.FollowsByItself(step));
        var names = string.Join("; ", named.Select(step => step.Says));
        return work > named.Count ? $"{names}, {work} steps" : names;
    }
}
