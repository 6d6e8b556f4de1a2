using Refettle.Timeline.Network;

namespace Refettle.Timeline.Tonight;

/// <summary>How hard and how dirty a task is. Judgement from where and how it is done, no figure.</summary>
internal static class Effort
{
    /// <summary>On one's back, with fire, or with a second pair of hands.</summary>
    public static bool IsHard(WorkTask task) =>
        task.Posture == Access.Ordering.Workplace.Under || task.Kind == TaskKind.Brace || task.Uses.Contains(Needed.Helper)
        || task.Rungs.Any(rung => (rung.Danger & Danger.Fire) != 0);

    /// <summary>At a table, or with clean hands.</summary>
    public static bool IsClean(WorkTask task) =>
        task.Kind is TaskKind.Order or TaskKind.Gaps or TaskKind.Return
        || (task.Posture == "inside" && task.Kind is TaskKind.Strip or TaskKind.Refit);
}
