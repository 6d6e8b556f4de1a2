using Refettle.Access;

namespace Refettle.Timeline.Network;

/// <summary>The tasks that take the car apart, from the plan's steps.</summary>
/// <param name="stuck">Joints that are taken to be stuck: opening one is a task of its own.</param>
internal sealed class StripTasks(NetworkDraft draft, CarStanding standing, Plan plan, IReadOnlyDictionary<string, StuckJoint> stuck)
{
    private readonly Dictionary<Fact, string> _taskOf = [];
    private readonly List<(Chunk Chunk, string Task)> _made = [];

    /// <summary>The pieces with their tasks, in the order of the plan; changes of stance among them.</summary>
    public IReadOnlyList<(Chunk Chunk, string Task)> Made => _made;

    /// <summary>The task that makes a fact true; null when none of the plan does.</summary>
    public string? TaskOf(Fact fact) => _taskOf.GetValueOrDefault(fact);

    public void Add()
    {
        foreach (var chunk in StripChunks.Of(standing, plan.Steps,
            step => IsStuck(step) || BodyRepair.Cuts(standing, step) || HotSteps.IsHot(standing, step) || LicensedWork.Is(step)
                || RefitWays.Has(standing, step)))
        {
            var id = draft.Add(TaskOf(chunk));
            _made.Add((chunk, id));
            foreach (var step in chunk.Steps)
                _taskOf[step.Fact] = id;
        }

        LinkNeeds();
        LinkStances();
        LinkProps();
    }

    private WorkTask TaskOf(Chunk chunk)
    {
        var lead = chunk.Lead;
        var isStance = standing.IsStance(lead.Fact);
        var isStuck = IsStuck(lead);
        var work = chunk.Steps.Where(step => !PlanOutline.FollowsByItself(step)).ToList();
        return new()
        {
            Id = isStuck ? $"try.{lead.Fact.Subject}" : Name(isStance ? "stance" : "strip", lead.Fact),
            Kind = isStance ? TaskKind.Stance : isStuck ? TaskKind.Try : TaskKind.Strip,
            Joint = isStuck ? lead.Fact.Subject : null,
            Says = TaskName.Of(chunk.Steps, lead.Fact),
            Takes = Whole(chunk.Steps.Sum(step => StepMinutes(step).Value)),
            Origin = work.Count == 0 ? Origin.Default : work.MinBy(step => step.Origin)!.Origin,
            Steps = chunk.Steps,
            Stance = isStance ? lead.Fact.Subject : chunk.Stance,
            Place = lead.Place,
            Posture = lead.Posture,
            Uses = Uses(chunk.Steps, isStance).ToValueList(),
            Cautions = chunk.Steps.SelectMany(step => step.Cautions).Distinct().ToValueList(),
        };
    }

    private bool IsStuck(Step step) => step.Fact.Kind == FactKind.Open && stuck.ContainsKey(step.Fact.Subject);

    /// <summary>What steps need beside the owner's hands. The words of their tools say so.</summary>
    public static IEnumerable<string> Uses(ValueList<Step> steps, bool isStance)
    {
        if (steps.Any(step => step.Tool.Contains("helper", StringComparison.OrdinalIgnoreCase)))
            yield return Needed.Helper;
        if (steps.Any(step => step.Place == Access.Ordering.Workplace.Bench))
            yield return Needed.Bench;
        if (isStance && steps[0].Fact.Subject != Car.OnWheels)
            yield return Needed.Lift;
    }

    /// <summary>Named after a fact, and the same whenever it is derived again.</summary>
    public static string Name(string kind, Fact fact) =>
        fact.Kind is FactKind.Off or FactKind.State
            ? $"{kind}.{fact.Subject}"
            : $"{kind}.{fact.Kind.ToString().ToLowerInvariant()}.{fact.Subject}";

    public static Minutes Whole(decimal minutes) => new(Math.Ceiling(minutes));

    /// <summary>A plan prices a stance once; each further change takes as long again.</summary>
    private Minutes StepMinutes(Step step) => !standing.IsStance(step.Fact) ? step.Cost.Open
        : standing.States[step.Fact.Subject].Ways.FirstOrDefault(way => way.Id == step.Way)?.Open ?? step.Cost.Open;

    private void LinkNeeds()
    {
        foreach (var (chunk, task) in _made)
        {
            foreach (var need in chunk.Steps
                .SelectMany(step => StepNeeds.Facts(standing, step).Concat(step.Needs.Where(need => !standing.IsStance(need)))))
            {
                if (TaskOf(need) is { } before)
                    draft.Link(before, task);
            }
        }
    }

    /// <summary>Work that needs a stance stays between the change into it and the next change; what carries
    /// the car stays on it meanwhile.</summary>
    private void LinkStances()
    {
        var stance = standing.Car.Stance;
        string? change = null;
        var users = new List<(string Task, string Stance)>();
        foreach (var (chunk, task) in _made)
        {
            var isChange = standing.IsStance(chunk.Lead.Fact);
            if (isChange)
            {
                foreach (var user in users.Where(user => user.Stance == stance))
                    draft.Link(user.Task, task);
                if (change is not null)
                    draft.Link(change, task);
                (stance, change) = (chunk.Lead.Fact.Subject, task);
                users.Add((task, stance));
            }
            else if (chunk.Stance is { } needed)
            {
                if (change is not null)
                    draft.Link(change, task);
                users.Add((task, needed));
            }

            foreach (var user in users.Where(user => user.Task != task && Carries(user.Stance).Any(part => Leaves(chunk, part))))
                draft.Link(user.Task, task, why: "it carries the car until then");
        }
    }

    /// <summary>What is held up is held up before its last joint opens: the joints before that stay before it.</summary>
    private void LinkProps()
    {
        var opened = new List<(string Joint, string Task)>();
        foreach (var (chunk, task) in _made)
        {
            foreach (var step in chunk.Steps.Where(step => step.Fact.Kind == FactKind.Open))
            {
                foreach (var earlier in step.Prop is null ? [] : opened.Where(earlier => Touch(earlier.Joint, step.Fact.Subject)))
                    draft.Link(earlier.Task, task, why: "held up before its last joint opens");
                opened.Add((step.Fact.Subject, task));
            }
        }
    }

    private bool Touch(string one, string other)
    {
        var parts = standing.Joints[other].Holds.Where(part => !standing.Parts[part].Fixed).ToHashSet();
        parts.UnionWith(parts.SelectMany(standing.SubAssembliesOf).Where(unit => TaskOf(Fact.Off(unit.Id)) is not null)
            .SelectMany(unit => unit.Members).ToList());
        return standing.Joints[one].Holds.Any(parts.Contains);
    }

    private IEnumerable<string> Carries(string stance) =>
        standing.States.TryGetValue(stance, out var state) ? standing.Carriers(state) : [];

    private bool Leaves(Chunk chunk, string part) => chunk.Steps.Any(step => step.Fact.Kind == FactKind.Off
        && (step.Fact.Subject == part
            || (standing.SubAssemblies.TryGetValue(step.Fact.Subject, out var unit) && unit.Members.Contains(part))));
}
