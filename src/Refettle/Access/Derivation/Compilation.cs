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
        Build(question, standing, way => way.IsAllowed, way => Pricing.Hundredths(way.Cost.Total), []);

    /// <summary>The problem in which nothing costs but permissions: its least cost is the smallest number of them.</summary>
    /// <param name="standing">The car.</param>
    /// <param name="question">The question that has no answer.</param>
    /// <param name="permissions">Filled with the permissions, in words; they are the last facts.</param>
    public static Compilation OfPermissions(CarStanding standing, Question question, List<string> permissions) =>
        Build(question, standing, _ => true, _ => 0, permissions);

    private static Compilation Build(
        Question question, CarStanding standing, Func<WaySource, bool> isAllowed, Func<WaySource, long> price, List<string> permissions)
    {
        var catalogue = new WayCatalogue(standing, question.Without);
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
            needs[way] = [.. needs[way], .. ways[way].Forbidden.Select(Permission)];

        for (var permission = 0; permission < permissions.Count; permission++)
        {
            factOf.Add(count + permission);
            needs.Add([]);
            cost.Add(1);
        }

        return new(new(count + permissions.Count, [.. factOf], [.. needs], [.. cost], goals), facts, ways);

        int Number(Fact fact)
        {
            if (!numbers.TryGetValue(fact, out var number))
            {
                numbers.Add(fact, number = facts.Count);
                facts.Add(fact);
            }

            return number;
        }

        int Permission(string words)
        {
            if (!permissions.Contains(words))
                permissions.Add(words);
            return count + permissions.IndexOf(words);
        }
    }
}
