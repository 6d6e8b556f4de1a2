using Refettle.Access;
using Refettle.Timeline.Network;

namespace Refettle.CloseUp.Refit;

/// <summary>Puts the tasks of the refit in an order: each after those it waits for; of those that could be next
/// one in the same stance, then at the same place, then what came off last by the log. What waits for a part that is not here
/// comes after all that does not.</summary>
internal static class RefitOrder
{
    /// <param name="held">What cannot be begun yet: a task of which some can comes twice, each time with its steps.</param>
    public static IEnumerable<WorkTask> Of(TaskNetwork network, StripMemory memory, HeldSteps held)
    {
        var left = network.Tasks.Where(task => task.Kind is TaskKind.Refit or TaskKind.Stance).SelectMany(task => Split(task, held))
            .ToDictionary(task => task.Id);
        var before = Links(network, left, held).ToLookup(link => link.After, link => link.Before);
        var latest = left.Values.ToDictionary(task => task.Id,
            task => task.Steps.Select(step => memory.LastOf(step.Fact)).DefaultIfEmpty(-1).Max());
        (string? Stance, string? Place) now = (null, null);
        while (left.Count > 0)
        {
            var next = left.Values.Where(task => !before[task.Id].Any(left.ContainsKey))
                .OrderBy(task => IsHeld(task, held)).ThenByDescending(task => task.Stance is null || task.Stance == now.Stance)
                .ThenByDescending(task => task.Place == now.Place)
                .ThenByDescending(task => latest[task.Id]).ThenBy(task => task.Id, StringComparer.Ordinal).First();
            left.Remove(next.Id);
            now = (next.Stance ?? now.Stance, next.Place);
            yield return next;
        }
    }

    private static bool IsHeld(WorkTask task, HeldSteps held) => held.IsHeld(task, task.Steps.Count == 0 ? null : task.Steps[0]);

    private static IEnumerable<WorkTask> Split(WorkTask task, HeldSteps held)
    {
        var later = task.Steps.Where(step => held.IsHeld(task, step)).ToValueList();
        return later.Count == 0 || later.Count == task.Steps.Count ? [task]
            : [task with { Steps = task.Steps.Where(step => !later.Contains(step)).ToValueList() },
                task with { Id = Later(task.Id), Steps = later }];
    }

    /// <summary>Those of the whole tasks for each part of them; what can be begun waits for nothing that cannot.</summary>
    private static IEnumerable<(string Before, string After)> Links(TaskNetwork network, Dictionary<string, WorkTask> left, HeldSteps held)
    {
        return network.Links.SelectMany(link => Both(link.Before).SelectMany(before => Both(link.After).Select(after => (before, after))))
            .Concat(left.Keys.Select(id => (id, Later(id))))
            .Where(link => left.ContainsKey(link.Item1) && left.ContainsKey(link.Item2)
                && !(IsHeld(left[link.Item1], held) && !IsHeld(left[link.Item2], held)));

        static string[] Both(string task) => [task, Later(task)];
    }

    private static string Later(string task) => $"{task} later";

    /// <summary>The steps of one task: what needed others off goes on before them; of the rest, what came off
    /// last by the log goes on first.</summary>
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
