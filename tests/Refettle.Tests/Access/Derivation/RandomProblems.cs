using Refettle.Access.Derivation;

namespace Refettle.Tests.Access.Derivation;

/// <summary>Random AND/OR graphs with circles, alternative ways and free facts.</summary>
internal static class RandomProblems
{
    public static DerivationProblem Make(int seed, int facts, int mostWays = 3, int mostNeeds = 3, int goals = 2)
    {
        var random = new Random(seed);
        var factOf = new List<int>();
        var needs = new List<int[]>();
        var cost = new List<long>();
        for (var fact = 0; fact < facts; fact++)
        {
            for (var way = random.Next(1, mostWays + 1); way > 0; way--)
            {
                factOf.Add(fact);
                needs.Add([.. Enumerable.Range(0, random.Next(0, mostNeeds + 1)).Select(_ => random.Next(facts)).Distinct()]);
                cost.Add(random.Next(0, 6));
            }
        }

        return new(facts, [.. factOf], [.. needs], [.. cost], [.. Enumerable.Range(0, goals).Select(_ => random.Next(facts)).Distinct()]);
    }

    /// <summary>The least cost over all choices of at most one way for each fact; null when none supports the goals.</summary>
    public static long? LeastByEnumeration(DerivationProblem problem) =>
        Solutions(problem).Min(ways => (long?)ways.Sum(way => problem.Cost[way]));

    /// <summary>The ways of all choices of at most one way for each fact that support the goals, each with what it uses.</summary>
    public static List<List<int>> Solutions(DerivationProblem problem)
    {
        var (wayOf, found) = (new int[problem.FactCount], new List<List<int>>());
        Choose(0);
        return found;

        void Choose(int fact)
        {
            if (fact == wayOf.Length)
            {
                if (Closure.Supported(problem, wayOf) is { } supported)
                    found.Add([.. supported.Select(member => wayOf[member])]);
                return;
            }

            foreach (var way in problem.WaysOf(fact).ToArray())
            {
                wayOf[fact] = way;
                Choose(fact + 1);
            }
        }
    }
}
