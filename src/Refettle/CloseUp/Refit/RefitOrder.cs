using Refettle.Access;
using Refettle.Timeline.Network;

namespace Refettle.CloseUp.Refit;

/// <summary>Puts the tasks of the refit in an order: each after those it waits for; of those that could be next one in the same stance, then at the same
/// place, then what came off last by the log.</summary>
internal static class RefitOrder
{
    public static IEnumerable<WorkTask> Of(TaskNetwork network, StripMemory memory)
    {
        var left = network.Tasks.Where(task => task.Kind is TaskKind.Refit or TaskKind.Stance).ToDictionary(task => task.Id);
        var before = network.Links.Where(link => left.ContainsKey(link.Before) && left.ContainsKey(link.After)).ToLookup(link => link.After, link => link.Before);
        var latest = left.Values.ToDictionary(task => task.Id, task => task.Steps.Select(step => memory.LastOf(step.Fact)).DefaultIfEmpty(-1).Max());
        (string? Stance, string? Place) now = (null, null);
        while (left.Count > 0)
        {
            var next = left.Values.Where(task => !before[task.Id].Any(left.ContainsKey))
                .OrderByDescending(task => task.Stance is null || task.Stance == now.Stance).ThenByDescending(task => task.Place == now.Place)
                .ThenByDescending(task => latest[task.Id]).ThenBy(task => task.Id, StringComparer.Ordinal).First();
            left.Remove(next.Id);
            now = (next.Stance ?? now.Stance, next.Place);
            yield return next;
        }
    }

    /// <summary>The steps of one task: what needed others off goes on before them; of the rest, what came off last by the log goes on first.</summary>
    public static IEnumerable<Step> Within(WorkTask task, CarStanding standing, StripMemory memory)
    {
        var left = task.Steps.ToList();
        var needed = left.ToDictionary(step => step.Fact, step => StepNeeds.Facts(standing, step).ToHashSet());
        while (left.Count > 0)
        {
            var next = left.Where(step => !left.Exists(other => other != step && needed[other.Fact].Contains(step.Fact)))
                .OrderByDescending(step => memory.LastOf(step.Fact)).FirstOrDefault() ?? left[0];
            left.Remove(next);
            yield return next;
        }
    }
}
