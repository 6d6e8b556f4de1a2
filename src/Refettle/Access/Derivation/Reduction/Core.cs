namespace Refettle.Access.Derivation.Reduction;

/// <summary>What is left of a problem after some reduction, and how to read its solutions back.</summary>
/// <param name="Problem">The smaller problem. Its goals are all facts known to be in every solution.</param>
/// <param name="Stands">For each of its ways, the ways of the first problem that choosing it stands for.</param>
/// <param name="Settled">Ways of the first problem that are chosen whatever else is.</param>
internal sealed record Core(DerivationProblem Problem, int[][] Stands, List<int> Settled)
{
    public static Core Of(DerivationProblem problem) =>
        new(problem, Enumerable.Range(0, problem.WayCount).Select(way => new[] { way }).ToArray(), []);

    /// <summary>How much there is left to solve.</summary>
    public int Size => Problem.FactCount + Problem.WayCount + Problem.Needs.Sum(needs => needs.Length);

    /// <summary>For each of its ways, the sum of a figure over the ways of the first problem that it stands for.</summary>
    public long[] Sums(long[] figure) => Array.ConvertAll(Stands, stands => stands.Sum(way => figure[way]));

    /// <summary>The same core without some ways and needs, and without facts that no kept way or goal mentions.</summary>
    /// <param name="keepWay">Which ways stay.</param>
    /// <param name="needsOf">The needs of a way that stays.</param>
    /// <param name="goals">The goals, in this core's numbers.</param>
    public Core Keep(bool[] keepWay, Func<int, int[]> needsOf, IEnumerable<int> goals)
    {
        var numbers = new int[Problem.FactCount];
        Array.Fill(numbers, -1);
        var count = 0;
        var factOf = new List<int>();
        var needs = new List<int[]>();
        var cost = new List<long>();
        var stands = new List<int[]>();
        for (var way = 0; way < Problem.WayCount; way++)
        {
            if (!keepWay[way])
                continue;
            factOf.Add(Number(Problem.FactOf[way]));
            needs.Add(Array.ConvertAll(needsOf(way), Number));
            cost.Add(Problem.Cost[way]);
            stands.Add(Stands[way]);
        }

        var newGoals = goals.Select(Number).ToArray();
        return new(new(count, [.. factOf], [.. needs], [.. cost], newGoals), [.. stands], Settled);

        int Number(int fact) => numbers[fact] >= 0 ? numbers[fact] : numbers[fact] = count++;
    }
}
