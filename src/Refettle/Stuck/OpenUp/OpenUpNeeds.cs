using Refettle.Access;

namespace Refettle.Stuck.OpenUp;

/// <summary>What each rung of each joint waits for.</summary>
internal sealed class OpenUpNeeds
{
    public OpenUpNeeds(CarStanding standing, ValueList<string> joints, LadderSet ladders, AtHand atHand)
    {
        Rungs = joints.SelectMany(
            joint => ladders.For(standing.Joints[joint].Kind).Values.SelectMany(ladder => ladder.Rungs).DistinctBy(rung => rung.Id)
            .Select(rung => new RungNeed(joint, rung, Gate.OpenedBy(standing, standing.Joints[joint], rung, atHand)))).ToValueList();
        Classes = Rungs.SelectMany((rung, number) => (rung.Facts ?? []).Select(fact => (fact, number)))
            .GroupBy(pair => pair.fact, pair => pair.number)
            .GroupBy(fact => string.Join(',', fact), fact => fact.Key)
            .Select(alike => alike.Order().ToValueList()).ToValueList();
    }

    public ValueList<RungNeed> Rungs { get; }

    /// <summary>Facts that the same rungs of the same joints wait for stand together: none of them helps without the others.</summary>
    public ValueList<ValueList<Fact>> Classes { get; }
}

/// <summary>What a rung of a joint waits for.</summary>
/// <param name="Facts">Null when nothing can open its gate.</param>
internal sealed record RungNeed(string Joint, Rung Rung, ValueList<Fact>? Facts);

/// <summary>What opening costs, by the access planner; what several openings share is one step.</summary>
/// <remarks>Each is planned by itself, so what is opened together could at times be reached more cheaply in one plan.</remarks>
internal sealed class OpeningPrices
{
    private readonly Dictionary<Fact, int> _numbers = [];
    private readonly HashSet<Fact> _outOfReach = [];

    public OpeningPrices(Car car, ValueList<ValueList<Fact>> classes, IAccessPlanner planner, CancellationToken cancel)
    {
        var openings = new List<Opening>();
        var steps = new List<OpeningStep>();
        var known = new Dictionary<(Fact, string), int>();
        var standing = new CarStanding(car);
        foreach (var facts in classes)
        {
            var plan = planner.Reach(car, new() { Goals = facts }, cancel);
            if (plan.Status == PlanStatus.Impossible)
            {
                _outOfReach.UnionWith(facts);
                continue;
            }

            foreach (var fact in facts)
                _numbers.Add(fact, openings.Count);
            openings.Add(new(facts[0].ToString(), Says(facts, standing), facts, plan.Steps.Select(Number).Distinct().ToValueList()));
        }

        (Openings, Steps) = (openings.ToValueList(), steps.ToValueList());

        int Number(Step step)
        {
            if (!known.TryGetValue((step.Fact, step.Way), out var number))
            {
                known.Add((step.Fact, step.Way), number = steps.Count);
                steps.Add(new(step.Says, step.Cost.Total));
            }

            return number;
        }
    }

    public ValueList<Opening> Openings { get; }

    public ValueList<OpeningStep> Steps { get; }

    public bool IsOutOfReach(Fact fact) => _outOfReach.Contains(fact);

    public int NumberOf(Fact fact) => _numbers.GetValueOrDefault(fact, -1);

    private static string Says(ValueList<Fact> facts, CarStanding standing) =>
        string.Join(", ", facts.Select(fact => fact.Kind == FactKind.State
        ? standing.States[fact.Subject].Name
        : standing.Parts.TryGetValue(fact.Subject, out var part) ? $"{part.Name} off" : fact.ToString()));
}
