using Refettle.Access;
using Refettle.Stuck;

namespace Refettle.Timeline.Network;

/// <summary>Replays tasks in the order of a schedule on the car: what is taken apart by the rules of
/// access, what is put together backwards by the same rules, each try against its gate. It shares nothing with what derives the tasks but
/// the words, and what of the log is odd.</summary>
public static class NetworkCheck
{
    private const string Report = "This is a fault of the program: please report it.";

    /// <summary>Everything that keeps the order from working; empty when it works.</summary>
    /// <param name="order">All tasks in the order of their starts.</param>
    public static ValueList<Fault> Of(Car car, Question question, IReadOnlyList<WorkTask> order) =>
        [.. Apart(car, question, order), .. Together(car, order), .. Gates(car, order), .. PlaceCheck.Of(car, order)];

    /// <summary>The strip, as a plan of its own.</summary>
    private static ValueList<Fault> Apart(Car car, Question question, IReadOnlyList<WorkTask> order)
    {
        var steps = order.Where(task => task.Kind is TaskKind.Strip or TaskKind.Try || IsChangeOfStrip(task))
            .SelectMany(task => task.Steps);
        return PlanCheck.Of(car, Plan(car, question, steps));
    }

    /// <summary>The refit from its end: put on the car that is whole, it must be a plan that takes it apart.</summary>
    private static ValueList<Fault> Together(Car car, IReadOnlyList<WorkTask> order)
    {
        // Putting together destroys nothing: what may be destroyed is judged on the way apart.
        var whole = car with
        {
            Structure = Backwards.Of(car.Structure),
            Done = [],
            Stance = Refettle.Car.OnWheels,
            Settings = car.Settings with { Lifted = car.Structure.Parts.Select(part => part.Id).ToValueList() }
        };
        var standing = new CarStanding(whole);
        var steps = new List<Step>();
        var stance = standing.States.ContainsKey(Refettle.Car.OnWheels) ? Refettle.Car.OnWheels : null;
        var (stanceOf, now) = (new Dictionary<string, string?>(), (string?)null);
        foreach (var task in order.Where(task => task.Kind is TaskKind.Refit || (task.Kind == TaskKind.Stance)))
        {
            now = task.Kind == TaskKind.Stance ? task.Stance : now;
            stanceOf[task.Id] = now ?? car.Stance;
        }

        foreach (var task in order.Where(task => task.Kind == TaskKind.Refit).Reverse())
        {
            if (stanceOf[task.Id] is { } needed && needed != stance && standing.States.TryGetValue(needed, out var state)
                && state.Ways.Count > 0)
            {
                steps.Add(new()
                {
                    Fact = Fact.State(needed),
                    Way = state.Ways[0].Id,
                    Says = state.Name,
                    Place = "",
                    Posture = "",
                    Cost = new(state.Ways[0].Open, state.Ways[0].Close, default, default)
                });
                stance = needed;
            }

            steps.AddRange(task.Steps.Reverse());
        }

        var goals = steps.Select(step => step.Fact).Take(1).ToValueList();
        var own = Places(steps.Where(step => HasOwnWay(standing, step.Fact)));
        var said = Places(order.Where(task => task is { Kind: TaskKind.Refit, NotYet: not null }).SelectMany(task => task.Steps)
            .Where(step => HasOwnWay(standing, step.Fact)));
        // What was undone with fire is not put together with it; a weld's own gate is judged where it is welded.
        var found = goals.Count == 0 ? [] : PlanCheck.All(whole, Plan(whole, new() { Goals = [] }, steps))
            .Where(one => one.Kind != PlanFaultKind.Minutes && !(one.Kind == PlanFaultKind.Fire && !own.Contains(one.Fault.Place))
                && !said.Contains(one.Fault.Place)).ToList();
        return found.Count == 0 ? [] : WithoutOdd(found, StepsDone.Of(new(car)).Odd, steps);
    }

    /// <summary>A log that broke the rules itself is not held to them; where the rest fails on that, its marks are told.</summary>
    private static ValueList<Fault> WithoutOdd(List<PlanFault> found, OddMarks marks, List<Step> steps)
    {
        var odd = Places(steps.Where(marks.Have));
        var faults = found.Where(one => !(one.Kind == PlanFaultKind.Order && odd.Contains(one.Fault.Place))).Select(one => one.Fault)
            .ToValueList();
        return faults.Count > 0 && odd.Count > 0 ? marks.Faults() : faults;
    }

    private static HashSet<string> Places(IEnumerable<Step> steps) => [.. steps.Select(step => $"step {step.Fact}")];

    private static bool HasOwnWay(CarStanding standing, Fact fact) => fact.Kind switch
    {
        FactKind.Open => standing.Joints[fact.Subject].Refit is not null,
        FactKind.Off => standing.Parts.TryGetValue(fact.Subject, out var part)
            ? part.Out.Refit is not null
            : standing.SubAssemblies[fact.Subject].Out.Refit is not null,
        _ => false,
    };

    /// <summary>Each try on the car as it stands then.</summary>
    private static IEnumerable<Fault> Gates(Car car, IReadOnlyList<WorkTask> order)
    {
        var done = car.Done.ToHashSet();
        var ended = new HashSet<string>();
        var standing = new CarStanding(car);
        foreach (var task in order)
        {
            ended.Add(task.Id);
            if (task.Kind == TaskKind.Refit)
                done.ExceptWith(task.Steps.Select(step => step.Fact));
            foreach (var closed in task.Kind == TaskKind.Try && task.Rungs.Count > 0
                ? Closed(car with { Done = done.ToValueList() }, task, ended)
                : [])
                yield return closed;
            foreach (var unready in task.Kind == TaskKind.Strip ? Unready(standing, task, ended) : [])
                yield return unready;
            if (task.Kind is TaskKind.Strip or TaskKind.Try)
                done.UnionWith(task.Steps.Select(step => step.Fact));
        }
    }

    private static IEnumerable<Fault> Closed(Car car, WorkTask task, HashSet<string> ended)
    {
        var standing = new CarStanding(car);
        ValueList<string> shielded = ended.Any(id => IsNamed(id, $"shield.{task.Joint}")) ? [AtHand.All] : [];
        foreach (var rung in task.Rungs)
        {
            var inHand = rung.Destroys
                .Where(word => TryPlaces.Of(standing.Joints[task.Joint!], word, standing.Parts).DefaultIfEmpty(word)
                    .All(place => IsInHand(task, place, task.Joint!, ended))).ToValueList();
            foreach (var reason in Gate.Of(standing, standing.Joints[task.Joint!], rung, new(inHand, shielded)))
                yield return new($"task {task.Id}",
                    $"{rung.Id} is to be tried while its gate is closed: {reason.Cause}: {string.Join(", ", reason.Things)}", Report);
        }
    }

    /// <summary>Ways of the plan with heat or fire: shielded, and what they destroy in hand. What burns
    /// near them is the plan's own check.</summary>
    private static IEnumerable<Fault> Unready(CarStanding standing, WorkTask task, HashSet<string> ended)
    {
        foreach (var step in task.Steps.Where(step => HotSteps.IsHot(standing, step)))
        {
            var joint = step.Fact.Subject;
            if (!ended.Any(id => IsNamed(id, $"shield.{joint}")))
                yield return new($"task {task.Id}", $"{step.Way} is to be used with rubber and plastic not shielded", Report);
            foreach (var part
                in step.Destroys.Where(part => HotSteps.MustBeInHand(standing, step) && !IsInHand(task, $"part {part}", part, ended)))
                yield return new($"task {task.Id}", $"{step.Way} is to be used with {part} not in hand", Report);
        }
    }

    /// <param name="ordered">What its delivery is named after where the shelf does not know of it.</param>
    private static bool IsInHand(WorkTask task, string thing, string ordered, HashSet<string> ended) =>
        task.Parts.Where(place => place.Thing == thing).ToList() is { Count: > 0 } places
        ? places.TrueForAll(place => !place.IsWaitedFor || place.ToCome.All(one => ended.Contains($"wait.delivery.{one.Id}")))
        : ended.Any(id => IsNamed(id, $"wait.delivery.{ordered}"));

    private static bool IsNamed(string id, string name) => id == name || id.StartsWith($"{name}-", StringComparison.Ordinal);

    private static bool IsChangeOfStrip(WorkTask task) => task.Kind == TaskKind.Stance && task.Steps.Count > 0;

    /// <summary>Stances are priced when they are first entered, as a plan prices them.</summary>
    private static Plan Plan(Car car, Question question, IEnumerable<Step> steps)
    {
        var standing = new CarStanding(car);
        var entered = new HashSet<Fact>();
        var priced = steps.Select(step => !standing.IsStance(step.Fact) ? step
            : step with { Cost = !standing.IsTrue(step.Fact) && entered.Add(step.Fact) ? Priced(standing, step) : Cost.Nothing })
                .ToValueList();
        return new()
        {
            Question = question,
            Status = PlanStatus.Feasible,
            Steps = priced,
            Cost = priced.Aggregate(Cost.Nothing, (sum, step) => sum + step.Cost)
        };
    }

    private static Cost Priced(CarStanding standing, Step step) =>
        standing.States[step.Fact.Subject].Ways.FirstOrDefault(way => way.Id == step.Way) is { } way && step.Cost.Total == Minutes.Zero
            ? new(way.Open, way.Close, default, default)
            : step.Cost;
}
