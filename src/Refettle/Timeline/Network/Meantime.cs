using Refettle.Access;

namespace Refettle.Timeline.Network;

/// <summary>When the car can go away for a task at the earliest.</summary>
/// <param name="Task">What it is moved for.</param>
/// <param name="Until">So many of the owner's minutes pass before, the move itself left out.</param>
public sealed record MoveDue(string Task, Minutes Until);

/// <summary>What is taken apart while the car cannot leave yet: only what leaves it rolling where it rolls, and
/// no more than there is time for.</summary>
internal sealed class Meantime(NetworkDraft draft, CarStanding standing, ValueList<MoveDue> dues)
{
    private static readonly TaskKind[] _apart = [TaskKind.Strip, TaskKind.Stance, TaskKind.Soak, TaskKind.Shield, TaskKind.Try];

    private readonly Dictionary<string, bool> _isFree = [];
    private readonly HashSet<string> _passed = [];
    private decimal _spent;

    /// <summary>The next task of the order.</summary>
    /// <param name="isBefore">Whether it takes of the time before the next move.</param>
    public void Pass(WorkTask task, bool isBefore)
    {
        _passed.Add(task.Id);
        _spent += isBefore && !task.IsWait ? task.Takes.Value : 0;
    }

    /// <summary>Whether there is time for a task before the car has to leave for the others.</summary>
    /// <param name="needs">What has to be done before them.</param>
    public bool Takes(WorkTask task, IReadOnlySet<string> visit, IReadOnlySet<string> needs) =>
        dues.FirstOrDefault(due => visit.Contains(due.Task)) is { } due
        && _spent + task.Takes.Value + needs.Where(id => !_passed.Contains(id) && !draft[id].IsWait)
            .Sum(id => draft[id].Takes.Value) <= due.Until.Value && IsFree(task);

    private bool IsFree(WorkTask task)
    {
        if (!_isFree.TryGetValue(task.Id, out var isFree))
            _isFree[task.Id] = isFree = IsApart(task) && NeedsNoOther(task) && !Hinders(task);
        return isFree;
    }

    /// <summary>A stance is changed by steps on the way apart, without any on the way back.</summary>
    private static bool IsApart(WorkTask task) => _apart.Contains(task.Kind) && (task.Kind != TaskKind.Stance || task.Steps.Count > 0);

    /// <summary>It waits for nobody and nothing but the owner's hands.</summary>
    private bool NeedsNoOther(WorkTask task) =>
        task.Uses.All(use => use is Needed.Lift or Needed.Bench) && draft.Before(task.Id).All(id => !draft[id].IsWait);

    /// <summary>A car that does not roll as it is has to be carried anyway.</summary>
    private bool Hinders(WorkTask task) =>
        !Rolling.Against(standing).Any()
        && Rolling.Against(new(standing.Car with { Done = [.. standing.Car.Done, .. task.Steps.Select(step => step.Fact)] })).Any();
}
