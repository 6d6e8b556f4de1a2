using System.Text.Json;
using Refettle.Access.Derivation;
using Refettle.Peers.Solvers;

namespace Refettle.Solvers.Tests.Published;

/// <summary>Open-cast mines: the most valuable set of blocks in which everything that lies on a block is dug with it.</summary>
/// <remarks>
/// As a derivation, each block of positive value is a goal <em>settled</em> with two ways: dug (needs the block, costs nothing) or given up
/// (needs nothing, costs its value). Digging a block needs those upon it and costs what it loses. The least cost is then the sum of
/// all positive values less the greatest value of a closed set.
/// </remarks>
public sealed class ClosureTests
{
    // H. P. Williams, Model Building in Mathematical Programming, example 14: 17,500.
    // Guéret, Prins, Sevaux, Applications of Optimization with Xpress-MP, section 6.4: 4,000,000, one best set.
    [SharedDataTheory]
    [InlineData("williams_opencast_30", 17_500, UnderTest.Reduced)]
    [InlineData("williams_opencast_30", 17_500, UnderTest.MixedInteger)]
    [InlineData("gueret_opencast_18", 4_000_000, UnderTest.Reduced)]
    [InlineData("gueret_opencast_18", 4_000_000, UnderTest.MixedInteger)]
    public void The_greatest_value_is_the_published_one(string name, long optimum, string solver)
    {
        var mine = Mine.Read(name);
        var problem = mine.Problem();
        var answer = UnderTest.Make(solver).Solve(problem);
        Assert.True(answer.IsOptimal);
        Assert.Empty(Foundation.Faults(problem, answer));
        Assert.Equal(optimum, mine.Value.Values.Where(value => value > 0).Sum() - answer.Cost);
    }

    [SharedDataTheory]
    [InlineData(UnderTest.Reduced)]
    [InlineData(UnderTest.MixedInteger)]
    public void The_one_best_set_is_found(string solver)
    {
        var mine = Mine.Read("gueret_opencast_18");
        var answer = UnderTest.Make(solver).Solve(mine.Problem());
        Assert.Equal([1, 2, 3, 4, 5, 6, 7, 10, 11, 12, 13, 17], mine.Dug(answer));
    }

    private sealed record Mine(Dictionary<int, long> Value, Dictionary<int, int[]> Requires)
    {
        private IEnumerable<int> Wanted => Value.Keys.Where(block => Value[block] > 0);

        public static Mine Read(string name)
        {
            using var all = JsonDocument.Parse(SharedData.Read("closure_small", "closure_examples.json"));
            return all.RootElement.GetProperty(name).Deserialize<Mine>(JsonSerializerOptions.Web)!;
        }

        /// <summary>Fact b-1 is block b dug; after them the wanted blocks, settled.</summary>
        public DerivationProblem Problem()
        {
            var ways = new List<(int Fact, int[] Needs, long Cost)>();
            foreach (var (block, value) in Value)
                ways.Add((block - 1, [.. Requires.GetValueOrDefault(block, []).Select(upon => upon - 1)], Math.Max(0, -value)));
            foreach (var (block, settled) in Wanted.Select((block, index) => (block, Value.Count + index)))
            {
                ways.Add((settled, [block - 1], 0));
                ways.Add((settled, [], Value[block]));
            }

            return new(
                Value.Count + Wanted.Count(), [.. ways.Select(way => way.Fact)], [.. ways.Select(way => way.Needs)],
                [.. ways.Select(way => way.Cost)], [.. Enumerable.Range(Value.Count, Wanted.Count())]);
        }

        public IEnumerable<int> Dug(DerivationAnswer answer) => Value.Keys.Where(block => answer.WayOf![block - 1] >= 0).Order();
    }
}
