using System.Text.Json;
using Refettle.Access;
using Refettle.Scope;

namespace Refettle.Solvers.Tests.Published;

/// <summary>Open-cast mines as jobs: a block is worth what its ore brings, costs what digging takes, and makes no
/// sense without those that lie on it.</summary>
public sealed class ScopeClosureTests
{
    // H. P. Williams, Model Building in Mathematical Programming, example 14: 17,500.
    // Guéret, Prins, Sevaux, Applications of Optimization with Xpress-MP, section 6.4: 4,000,000.
    [SharedDataTheory]
    [InlineData("williams_opencast_30", 17_500)]
    [InlineData("gueret_opencast_18", 4_000_000)]
    public void The_greatest_gain_is_the_published_one(string name, int optimum)
    {
        var scope = new ScopePlanner(UnderTest.Make(), new MixedIntegerSolver()).Choose(Mine(name), new() { PerHour = new(60) });
        Assert.Equal(PlanStatus.Optimal, scope.Status);
        Assert.Equal(optimum, scope.Gain);
    }

    private static Car Mine(string name)
    {
        using var all = JsonDocument.Parse(SharedData.Read("closure_small", "closure_examples.json"));
        var mine = all.RootElement.GetProperty(name);
        var requires = mine.GetProperty("requires").Deserialize<Dictionary<string, int[]>>()!;
        return new()
        {
            Id = "mine",
            Name = "Mine",
            Jobs = mine.GetProperty("value").Deserialize<Dictionary<string, long>>()!.Select(block => new Job
            {
                Id = $"block{block.Key}",
                Name = $"Block {block.Key}",
                Worth = Math.Max(0, block.Value) is > 0 and var worth ? new(worth, worth, worth, WorthUnit.Money, Origin.User) : null,
                Parts = new(Math.Max(0, -block.Value)),
                With = requires.GetValueOrDefault(block.Key, []).Select(upon => $"block{upon}").ToValueList(),
            }).ToValueList(),
        };
    }
}
