using CsCheck;
using Refettle.Access.Derivation;

namespace Refettle.Solvers.Tests.Properties;

/// <summary>Random problems that CsCheck can shrink.</summary>
internal static class Problems
{
    public sealed record RandomWay(int Fact, int[] Needs, int Cost);

    public static Gen<RandomWay> Way(int facts) =>
        Gen.Select(Gen.Int[0, facts - 1], Gen.Int[0, facts - 1].Array[0, 4], Gen.Int[0, 900],
            (fact, needs, cost) => new RandomWay(fact, needs, cost));

    /// <summary>The number of facts, ways and goals, and a seed for what a test wants to vary.</summary>
    public static Gen<(int Facts, RandomWay[] Ways, int[] Goals, int Seed)> Any { get; } =
        Gen.Int[2, 24].SelectMany(facts => Gen.Select(
            Gen.Const(facts), Way(facts).Array[facts, facts * 3], Gen.Int[0, facts - 1].Array[1, 4], Gen.Int[0, 1_000_000]));

    public static DerivationProblem Make(int facts, IReadOnlyList<RandomWay> ways, int[] goals) => new(
        facts, [.. ways.Select(way => way.Fact)], [.. ways.Select(way => way.Needs.Distinct().ToArray())],
        [.. ways.Select(way => (long)way.Cost)], [.. goals.Distinct()]);
}
