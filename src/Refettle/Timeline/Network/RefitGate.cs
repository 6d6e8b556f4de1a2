using Refettle.Access;

namespace Refettle.Timeline.Network;

/// <summary>Says it where a thing goes back by a way of its own and what that asks for will not be so by then.</summary>
public static class RefitGate
{
    /// <summary>How the caution begins.</summary>
    public const string NotYet = "Not to be fitted that way yet:";

    internal static void Close(NetworkDraft draft, CarStanding standing, RefitTasks refit) => ClosedSteps.Mark(
        draft, refit, (task, step) => RefitWays.Has(standing, step) ? Says(draft, refit, task, step) : null, step => $"{step.Fact}",
        "not as planned", "Name it among the goals, or change the refit way.");

    private static string? Says(NetworkDraft draft, RefitTasks refit, string task, Step step)
    {
        if (refit.Ways.IsNever(step))
            return $"{NotYet} flame or sparks at what itself burns or goes off.";
        var unmet = refit.Ways.Needs(step).SelectMany(refit.Plain).Distinct().Where(need => !IsUntil(draft, refit, task, need))
            .Select(need => need.ToString()).ToList();
        return unmet.Count == 0 ? null : $"{NotYet} by this plan {string.Join(", ", unmet)} does not hold then.";
    }

    /// <summary>Whether all that takes a fact back comes after the task, or with it.</summary>
    private static bool IsUntil(NetworkDraft draft, RefitTasks refit, string task, Fact need) =>
        refit.TasksOf(need).ToList() is { Count: > 0 } later && later.TrueForAll(one => one != task && draft.Reaches(task, one));
}
