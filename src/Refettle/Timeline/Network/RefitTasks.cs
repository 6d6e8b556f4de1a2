using Refettle.Access;

namespace Refettle.Timeline.Network;

/// <summary>The tasks that put the car together: every need turned round. Where taking B off needed A off, fitting A needs B on.</summary>
internal sealed class RefitTasks(NetworkDraft draft, CarStanding standing, StripTasks strip)
{
    private readonly StepsDone _done = StepsDone.Of(standing);
    private readonly Dictionary<Fact, string> _taskOf = [];
    private readonly Dictionary<string, string> _mirrorOf = [];

    public RefitWays Ways { get; } = new(standing);

    /// <summary>All of them, changes of stance among them.</summary>
    public IEnumerable<string> All => _mirrorOf.Values.Concat(_taskOf.Values).Distinct();

    /// <summary>Everything that is taken back, whether it is done already or still to be done.</summary>
    public IEnumerable<Step> Steps => All.Select(id => draft[id]).Where(task => task.Kind == TaskKind.Refit).SelectMany(task => task.Steps);

    /// <summary>The task that takes back what a task of the strip does.</summary>
    public string MirrorOf(string task) => _mirrorOf[task];

    /// <summary>The tasks that take a fact back; several for what follows from others.</summary>
    public IEnumerable<string> TasksOf(Fact fact)
    {
        if (_taskOf.TryGetValue(fact, out var task))
            return [task];
        return fact.Kind switch
        {
            FactKind.Free =>
                standing.JointsOf(fact.Subject).Select(joint => Fact.Open(joint.Id)).Prepend(Fact.Off(fact.Subject)).SelectMany(Known),
            FactKind.Reach => standing.Spaces[fact.Subject].ClosedBy.Select(Fact.Off).SelectMany(Known),
            _ => [],
        };

        IEnumerable<string> Known(Fact one) => _taskOf.TryGetValue(one, out var known) ? [known] : [];
    }

    /// <summary>What a fact comes down to: of a space its closers, of a sub-assembly that did not come off as one its members.</summary>
    public IEnumerable<Fact> Plain(Fact fact) => _taskOf.ContainsKey(fact) ? [fact] : fact.Kind switch
    {
        FactKind.Free => standing.JointsOf(fact.Subject).Select(joint => Fact.Open(joint.Id)).Prepend(Fact.Off(fact.Subject)),
        FactKind.Reach => standing.Spaces[fact.Subject].ClosedBy.SelectMany(name => Plain(Fact.Off(name))),
        FactKind.Off when standing.SubAssemblies.TryGetValue(fact.Subject, out var unit) => unit.Members.Select(Fact.Off),
        _ => [fact],
    };

    /// <param name="needs">The links among the tasks that take the car apart.</param>
    public void Add(IReadOnlyCollection<TaskLink> needs)
    {
        var before = StripChunks.Of(standing, _done.Steps,
            step => WeldGate.IsWeld(standing, step) || LicensedWork.Is(step) || RefitWays.Has(standing, step)
                || _done.Odd.Have(step)).Select(chunk => (Chunk: chunk, Task: AddFor(chunk))).ToList();
        var stance = standing.Car.Stance;
        foreach (var (chunk, task) in strip.Made)
        {
            _mirrorOf[task] = standing.IsStance(chunk.Lead.Fact) ? AddStance(stance, chunk) : AddFor(chunk);
            draft.Link(task, _mirrorOf[task]);
            if (standing.IsStance(chunk.Lead.Fact))
                stance = chunk.Lead.Fact.Subject;
        }

        var owns = strip.Made.Where(made => RefitWays.Has(standing, made.Chunk.Lead)).Select(made => made.Task).ToHashSet();
        foreach (var link in needs.Where(link => _mirrorOf.ContainsKey(link.Before) && _mirrorOf.ContainsKey(link.After)
            && !(owns.Contains(link.After) && IsPlainNeed(link))))
            draft.Link(_mirrorOf[link.After], _mirrorOf[link.Before], why: link.Why);
        LinkToDone(before);
        OnWheels(before.Where(made => made.Chunk.Stance is not null).ToList());
    }

    /// <summary>A need of the strip alone, neither a change of stance nor what holds something up: a way back has
    /// needs of its own in its place.</summary>
    private bool IsPlainNeed(TaskLink link) => link.Why.Length == 0 && draft[link.Before].Kind != TaskKind.Stance;

    private string AddFor(Chunk chunk)
    {
        var work = chunk.Steps.Where(step => !PlanOutline.FollowsByItself(step)).ToList();
        var steps = chunk.Steps.Reverse().Select(step => Ways.Taken(step) with { Says = PuttingBack.Says(step, standing) }).ToValueList();
        var id = draft.Add(new()
        {
            Id = StripTasks.Name("refit", chunk.Lead.Fact),
            Kind = TaskKind.Refit,
            Says = TaskName.Of(steps, chunk.Lead.Fact),
            Takes = StripTasks.Whole(work.Sum(step => step.Cost.Close.Value)),
            Origin = steps.Where(step => !PlanOutline.FollowsByItself(step)).Select(step => step.Origin).DefaultIfEmpty(Origin.Default)
                .Min(),
            Steps = steps,
            Stance = chunk.Stance,
            Place = chunk.Lead.Place,
            Posture = Ways.Taken(chunk.Lead).Posture,
            Uses = StripTasks.Uses(steps, isStance: false).ToValueList(),
            Cautions = steps.Select(step => step.Prop).OfType<string>().Concat(steps.SelectMany(step => step.Cautions)).Distinct()
                .ToValueList(),
        });
        foreach (var step in chunk.Steps)
            _taskOf[step.Fact] = id;
        return id;
    }

    /// <summary>Back into the stance that the car was in before a change.</summary>
    private string AddStance(string? stance, Chunk change) => draft.Add(StanceTask($"refit.stance.{change.Lead.Fact.Subject}", stance));

    private WorkTask StanceTask(string id, string? stance)
    {
        var state = stance is null ? null : standing.States.GetValueOrDefault(stance);
        var way = state?.Ways.MinBy(way => way.Open.Value);
        return new()
        {
            Id = id,
            Kind = TaskKind.Stance,
            Says = state is null ? "Back to how the car stood" : state.Name,
            Takes = StripTasks.Whole(way?.Open.Value ?? 0),
            Origin = way?.Origin ?? Origin.Default,
            Stance = stance,
            Uses = stance is null or Car.OnWheels ? [] : [Needed.Lift],
            Cautions = way?.Cautions ?? [],
        };
    }

    /// <summary>What was done already goes back on after what needed it. Needs in a circle, which a log can hold, are passed over:
    /// those of what is odd about it.</summary>
    private void LinkToDone(List<(Chunk Chunk, string Task)> done)
    {
        var all = done.Concat(strip.Made.Select(made => (made.Chunk, Task: _mirrorOf[made.Task]))).ToList();
        foreach (var (step, task) in all.SelectMany(one => one.Chunk.Steps.Select(step => (step, one.Task)))
            .OrderBy(one => _done.Odd.Have(one.step)))
        {
            foreach (var need in RefitWays.Has(standing, step)
                ? Ways.Needs(step).Intersect(StepNeeds.Facts(standing, step))
                : StepNeeds.Facts(standing, step))
            {
                if (_taskOf.TryGetValue(need, out var later))
                    draft.TryLink(task, later);
            }
        }

        // After what holds for every way, so that no wish of a way back turns a joint round.
        foreach (var (chunk, task) in all)
        {
            foreach (var later in chunk.Steps.Where(step => RefitWays.Has(standing, step)).SelectMany(Ways.Needs).SelectMany(Plain)
                .SelectMany(TasksOf))
                draft.TryLink(task, later);
        }
    }

    /// <summary>What was taken apart in a stance is put together in it: the one that the car is in
    /// last on the way back, or once more at the end. Then the car is put on its wheels.</summary>
    private void OnWheels(List<(Chunk Chunk, string Task)> users)
    {
        var changes = strip.Made.Where(made => standing.IsStance(made.Chunk.Lead.Fact)).Select(made => _mirrorOf[made.Task]).Reverse()
            .ToList();
        var last = standing.Car.Stance;
        var ahead = users.Where(user => user.Chunk.Stance != last).Select(user => user.Task).ToHashSet();
        foreach (var group in users.GroupBy(user => user.Chunk.Stance!).OrderByDescending(group => group.Key == last))
        {
            string? into = changes.Count > 0 ? changes[^1] : null;
            if (group.Key != last)
            {
                into = draft.Add(StanceTask($"refit.stance.{group.Key}.again", group.Key));
                Chain(into, changes, ahead);
                ahead.ExceptWith(group.Select(user => user.Task));
                last = group.Key;
            }

            foreach (var (_, task) in group.Where(_ => into is not null))
                draft.TryLink(into!, task);
        }

        if (last == Car.OnWheels || !standing.States.ContainsKey(Car.OnWheels))
            return;
        var end = draft.Add(StanceTask("refit.stance.on-wheels", Car.OnWheels));
        Chain(end, changes, ahead);
    }

    /// <summary>Comes after all that is put together in the stances before it.</summary>
    private void Chain(string change, List<string> changes, HashSet<string> ahead)
    {
        foreach (var task in All.Where(task => draft[task].Stance is not null && !ahead.Contains(task)).Concat(changes).ToList())
            draft.TryLink(task, change);
        _mirrorOf[change] = change;
        changes.Add(change);
    }
}
