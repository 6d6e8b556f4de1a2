using Refettle.Access;
using Refettle.Timeline.Network;

namespace Refettle.CloseUp.Refit;

/// <summary>Which steps of a refit cannot be begun while parts are not here: those that fit them, and all that come after.</summary>
internal sealed class HeldSteps
{
    private static readonly ValueList<string> _none = [];

    private readonly CarStanding _standing;
    private readonly Dictionary<Fact, string> _absent;
    private readonly Dictionary<string, HashSet<string>> _tasks = [];
    private readonly Dictionary<Fact, HashSet<string>> _steps = [];

    /// <param name="network">Of the refit, its tasks each after those that it waits for.</param>
    /// <param name="absent">Parts that are not here, by identifier.</param>
    public HeldSteps(CarStanding standing, TaskNetwork network, ValueList<string> absent)
    {
        _standing = standing;
        var facts = network.Tasks.SelectMany(task => task.Steps).Select(step => step.Fact).ToHashSet();
        _absent = absent.SelectMany(part => Fitting(part, facts).Select(fact => (fact, part))).DistinctBy(one => one.fact).ToDictionary();
        var before = network.Links.ToLookup(link => link.After);
        var tasks = network.Tasks.ToDictionary(task => task.Id);
        foreach (var task in _absent.Count == 0 ? [] : network.Tasks)
            Hold(task, before[task.Id].Select(link => (tasks[link.Before], link.Why)).ToList());
    }

    /// <summary>The parts that a step waits for; those of a task without steps, as a change of stance.</summary>
    public ValueList<string> Of(WorkTask task, Step? step) =>
        (step is null ? _tasks.GetValueOrDefault(task.Id) : _steps.GetValueOrDefault(step.Fact)) is { } parts
            ? parts.Order(StringComparer.Ordinal).ToValueList()
            : _none;

    public bool IsHeld(WorkTask task, Step? step) => Of(task, step).Count > 0;

    /// <summary>What puts a part on: alone, else with what it came off with.</summary>
    private IEnumerable<Fact> Fitting(string part, HashSet<Fact> facts) => facts.Contains(Fact.Off(part)) ? [Fact.Off(part)]
        : _standing.Car.Structure.SubAssemblies.Where(unit => unit.Members.Contains(part)).Select(unit => Fact.Off(unit.Id))
            .Where(facts.Contains);

    private void Hold(WorkTask task, List<(WorkTask Task, string Why)> before)
    {
        foreach (var (other, _) in before.Where(one => IsWhole(one.Task, task, one.Why)))
            Add(_tasks, task.Id, _tasks.GetValueOrDefault(other.Id) ?? []);
        foreach (var step in task.Steps)
        {
            if (_tasks.TryGetValue(task.Id, out var whole))
                Add(_steps, step.Fact, whole);
            if (_absent.TryGetValue(step.Fact, out var part))
                Add(_steps, step.Fact, [part]);
        }

        var around = before.SelectMany(one => one.Task.Steps).Concat(task.Steps).DistinctBy(step => step.Fact).ToList();
        var own = task.Steps.Select(step => step.Fact).ToHashSet();
        var next = around.ToDictionary(step => step.Fact, step => StepNeeds.Facts(_standing, step).Where(own.Contains).ToList());
        foreach (var held in around.Where(step => _steps.ContainsKey(step.Fact))
            .Select(step => (step.Fact, Parts: _steps[step.Fact].ToHashSet())).ToList())
        {
            foreach (var later in Onward.From(held.Fact, fact => next[fact]))
                Add(_steps, later, held.Parts);
        }

        var all = task.Steps.SelectMany(step => _steps.GetValueOrDefault(step.Fact) ?? []).ToHashSet();
        Add(_tasks, task.Id, all);
    }

    /// <summary>All of a task waits for all of the other, not only for those of its steps that it is about.</summary>
    private bool IsWhole(WorkTask other, WorkTask task, string why) => why.Length > 0 || task.Steps.Count == 0 || other.Steps.Count == 0
        || other.Steps.Concat(task.Steps).Any(step => RefitWays.Has(_standing, step));

    private static void Add<T>(Dictionary<T, HashSet<string>> held, T key, HashSet<string> parts)
        where T : notnull
    {
        if (parts.Count == 0)
            return;
        if (!held.TryGetValue(key, out var known))
            held[key] = known = [];
        known.UnionWith(parts);
    }
}
