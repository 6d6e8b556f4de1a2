using Refettle.Peers.Projects;
using Refettle.Solvers.Tests.Published;
using Refettle.Timeline.Scheduling;

namespace Refettle.Solvers.Tests.Scheduling;

/// <summary>Breeding by itself, with no proof beside it, comes to the best finishes that are known of PSPLIB j60 (Kolisch and Sprecher
/// 1996, finishes of the Ghent list of September 2024).</summary>
public sealed class BreedingTests
{
    [SharedDataTheory]
    [InlineData("j6014_10", 72)]
    [InlineData("j6025_8", 99)]
    [InlineData("j6046_9", 69)]
    public void It_comes_to_the_best_known_finish(string name, int best)
    {
        var builder = new Builder(Network.Of(PublishedProject.Parse(SharedData.Read("rcpsp_sm", "j60", $"{name}.sm"), ".sm")));
        var first = new FirstSchedule(builder, new Random(1));
        first.Run(200, best);
        builder.MostPutBack = builder.Network.Count;
        var search = new GeneticSearch(builder, first.Best!, new Random(1), population: 100);
        for (var before = 0L; search.Makespan > best && builder.Built < 600_000 && builder.Built > before;)
        {
            before = builder.Built;
            search.Run(best, 600_000 - before);
        }

        Assert.Equal(best, search.Makespan);
        Assert.Equal(best, builder.Makespan(search.Best));
    }

    [Fact]
    public void Of_two_that_end_together_the_one_with_more_done_early_is_better()
    {
        Fitness[] all = [new(10, 90), Fitness.None, new(9, 95), new(10, 80)];
        Assert.Equal([new(9, 95), new(10, 80), new(10, 90), Fitness.None], all.Order());
    }

    [Fact]
    public void The_better_one_of_two_is_the_mate_and_a_member_without_one_its_own()
    {
        var population = new Population(2, 1);
        population.Set(0, [3], new(3, 9));
        population.Set(1, [2], new(2, 4));
        var drawn = Mates(population);
        Assert.InRange(drawn.Count(mate => mate == 1), drawn.Count * 2 / 3, drawn.Count - 1);
        population.Set(0, [3], Fitness.None);
        population.Set(1, [2], Fitness.None);
        Assert.Equal([1], Mates(population).Distinct());
    }

    /// <summary>Of the second member.</summary>
    private static List<int> Mates(Population population)
    {
        var random = new Random(5);
        return [.. Enumerable.Range(0, 300).Select(_ => population.Mate(1, random))];
    }
}
