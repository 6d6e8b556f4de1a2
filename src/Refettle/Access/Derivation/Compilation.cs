namespace Refettle.Access.Derivation;

/// <summary>A question about a car as a least-cost derivation, with the way back to the car's words.</summary>
internal sealed class Compilation
{
    private Compilation(DerivationProblem problem, List<Fact> facts, List<WaySource> ways) =>
        (Problem, Facts, Ways) = (problem, facts, ways);

    public DerivationProblem Problem { get; }

    /// <summary>The facts by number.</summary>
    public IReadOnlyList<Fact> Facts { get; }

    /// <summary>The ways by number.</summary>
    public IReadOnlyList<WaySource> Ways { get; }

    /// <summary>The problem of the question: only facts that the goals can call for and that do not hold yet.</summary>
    public static Compilation Of(CarStanding standing, Question question) =>
        Build(
            question, standing, way => way.IsAllowed, way => Pricing.Hundredths(way.Cost.Total),
            way => way.Uniques, Pricing.Hundredths(standing.Car.Settings.UniqueOff), []);

    /// <summary>The problem in which nothing costs but permissions: its least cost is the smallest number of them.</summary>
    /// <param name="standing">The car.</param>
    /// <param name="question">The question that has no answer.</param>
    /// <param name="permissions">Filled with the permissions, in words; they are the last facts.</param>
    public static Compilation OfPermissions(CarStanding standing, Question question, List<string> permissions) =>
        Build(question, standing, _ => true, _ => 0, way => way.Forbidden, 1, permissions);

    /// <summary>The ways that an answer to the problem chose, without the shared charges.</summary>
    public IEnumerable<WaySource> Chosen(DerivationAnswer answer) =>
        answer.WayOf!.Where(way => way >= 0 && way < Ways.Count).Select(way => Ways[way]);

    /// <summary>What they cost, with the owner's penalty for each unique part that comes off.</summary>
    public Cost CostOf(DerivationAnswer answer, Settings settings)
    {
        var chosen = Chosen(answer).ToList();
        return chosen.Aggregate(Pricing.OfUniques(chosen.SelectMany(way => way.Uniques).Distinct().Count(), settings),
            (sum, way) => sum + way.Cost);
    }

    /// <remarks>What several ways may call for but is charged once (a permission, a unique part
    /// taken off) is a fact of its own, made true by a way that needs nothing. These facts and ways come last.</remarks>
    private static Compilation Build(
        Question question, CarStanding standing, Func<WaySource, bool> isAllowed, Func<WaySource, long> price,
        Func<WaySource, IReadOnlyList<string>> chargesOf, long charge, List<string> charges)
    {
        var catalogue = new WayCatalogue(standing, question.Without,
            last: question.Goals.Where(standing.IsStance).Select(goal => goal.Subject).FirstOrDefault());
        var numbers = new Dictionary<Fact, int>();
        var facts = new List<Fact>();
        var ways = new List<WaySource>();
        var factOf = new List<int>();
        var needs = new List<int[]>();
        var cost = new List<long>();
        var goals = question.Goals.Distinct().Where(goal => !standing.IsTrue(goal)).Select(Number).ToArray();
        for (var fact = 0; fact < facts.Count; fact++)
        {
            foreach (var way in catalogue.Of(facts[fact]).Where(isAllowed))
            {
                factOf.Add(fact);
                needs.Add([.. way.Needs.Select(Number)]);
                cost.Add(price(way));
                ways.Add(way);
            }
        }

        var count = facts.Count;
        for (var way = 0; way < ways.Count; way++)
            needs[way] = [.. needs[way], .. chargesOf(ways[way]).Select(Charge)];

        for (var number = 0; number < charges.Count; number++)
        {
            factOf.Add(count + number);
            needs.Add([]);
            cost.Add(charge);
        }

        return new(new(count + charges.Count, [.. factOf], [.. needs], [.. cost], goals), facts, ways);

        int Number(Fact fact)
        {
            if (!numbers.TryGetValue(fact, out var number))
            {
                numbers.Add(fact, number = facts.Count);
                facts.Add(fact);
            }

            return number;
        }

        int Charge(string words)
        {
            if (!charges.Contains(words))
                charges.Add(words);
            return count + charges.IndexOf(words);
        }
    }
}
