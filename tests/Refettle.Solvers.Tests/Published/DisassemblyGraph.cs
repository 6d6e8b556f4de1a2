using System.Text.Json;
using Refettle.Access.Derivation;

namespace Refettle.Solvers.Tests.Published;

/// <summary>An AND/OR disassembly graph: a task may start when all of <c>And</c> and, where there is an
/// <c>Or</c>, one of it are done.</summary>
internal sealed record DisassemblyGraph(IReadOnlyList<DisassemblyTask> Tasks)
{
    public static DisassemblyGraph Parse(string json) =>
        JsonSerializer.Deserialize<DisassemblyGraph>(json, JsonSerializerOptions.Web)!;

    /// <summary>Each task is a fact; it has a way for each alternative of its <c>Or</c>, at the task's time.</summary>
    public DerivationProblem Problem(IEnumerable<int> targets)
    {
        var number = Tasks.Select((task, index) => (task.Id, index)).ToDictionary(pair => pair.Id, pair => pair.index);
        var ways = Tasks.SelectMany(task => Alternatives(task), (task, needs) => (task, needs)).ToList();
        return new(
            Tasks.Count,
            [.. ways.Select(way => number[way.task.Id])],
            [.. ways.Select(way => way.needs.Select(need => number[need]).Distinct().ToArray())],
            [.. ways.Select(way => (long)(way.task.Time * 100))],
            [.. targets.Select(target => number[target])]);
    }

    private static IEnumerable<IEnumerable<int>> Alternatives(DisassemblyTask task) =>
        task.Or.Count == 0 ? [task.And] : task.Or.Select(alternative => task.And.Append(alternative));
}

internal sealed record DisassemblyTask(int Id, decimal Time, IReadOnlyList<int> And, IReadOnlyList<int> Or);
