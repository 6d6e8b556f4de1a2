using Refettle.Access.Derivation;

namespace Refettle.Tests.Access.Derivation;

public sealed class AlternativesTests
{
    private const int Most = 4;

    /// <summary>Against all choices there are: time after time the cheapest that does without something of each cheaper one.</summary>
    [Fact]
    public void None_that_is_cheaper_is_passed_over()
    {
        for (var seed = 0; seed < 1_500; seed++)
        {
            var problem = Distinct(RandomProblems.Make(seed, facts: 3 + seed % 5, goals: 1), seed);
            var best = new TreeSearch().Solve(problem);
            if (best.WayOf is null)
                continue;
            var found = Alternatives.Of(problem, best, fact => fact % 3 != 0, new TreeSearch(), Most, CancellationToken.None)
                .Select(other => other.Cost).ToList();
            Assert.True(ByEnumeration(problem, best.Cost).SequenceEqual(found),
                $"seed {seed}: {string.Join(", ", ByEnumeration(problem, best.Cost))} against {string.Join(", ", found)}");
        }
    }

    private static List<long> ByEnumeration(DerivationProblem problem, long best)
    {
        var all = RandomProblems.Solutions(problem)
            .Select(ways => (Ways: ways.Where(way => problem.FactOf[way] % 3 != 0).ToHashSet(), Cost: ways.Sum(way => problem.Cost[way])))
            .OrderBy(one => one.Cost).ToList();
        var taken = new List<(HashSet<int> Ways, long Cost)>();
        foreach (var one in all.SkipWhile(one => one.Cost < best))
        {
            if (taken.Count <= Most && taken.TrueForAll(other => !other.Ways.IsSubsetOf(one.Ways)))
                taken.Add(one);
        }

        return taken.Skip(1).Select(one => one.Cost).ToList();
    }

    /// <summary>Costs of which no two sums are alike, so that there is one order.</summary>
    private static DerivationProblem Distinct(DerivationProblem problem, int seed)
    {
        var random = new Random(seed);
        return new(problem.FactCount, [.. problem.FactOf], [.. problem.Needs.Select(needs => needs.ToArray())],
            [.. problem.Cost.Select(cost => cost * 1_000_000_000L + random.Next(1, 1_000_000))], [.. problem.Goals]);
    }
}
