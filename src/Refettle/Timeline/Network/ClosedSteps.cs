using Refettle.Access;

namespace Refettle.Timeline.Network;

/// <summary>Says it at every refit step that cannot be done as planned.</summary>
internal static class ClosedSteps
{
    /// <param name="says">What closes a step of a task; null when nothing does.</param>
    /// <param name="about">The place of its note.</param>
    /// <param name="how">Added to what the task says.</param>
    /// <param name="mend">What to do.</param>
    public static void Mark(
        NetworkDraft draft, RefitTasks refit, Func<string, Step, string?> says, Func<Step, string> about, string how, string mend)
    {
        foreach (var task in refit.All.Where(id => draft[id].Kind == TaskKind.Refit).ToList())
        {
            foreach (var step in draft[task].Steps)
            {
                if (says(task, step) is not { } closed)
                    continue;
                draft.Change(task, old => old with
                {
                    Says = $"{old.Says}: {how}",
                    NotYet = closed,
                    Cautions = [closed, .. old.Cautions],
                    Steps = old.Steps.Select(one => one.Fact == step.Fact ? one with { Cautions = [closed, .. one.Cautions] } : one)
                        .ToValueList(),
                });
                draft.Notes.Add(new(about(step), closed, mend) { Severity = Severity.Note });
            }
        }
    }
}
