using Refettle.Peers.Projects;
using Refettle.Solvers.Tests.Published;
using Refettle.Timeline;
using Refettle.Timeline.Scheduling;
using Refettle.Timeline.Scheduling.Proving;

namespace Refettle.Solvers.Tests.Scheduling;

/// <summary>What is proven and what is found: against trying all schedules, and against published optima (PSPLIB j30: Kolisch and
/// Sprecher 1996).</summary>
public sealed class ProofSearchTests
{
    private const int Horizon = 36;

    public static IEnumerable<object[]> Seeds => Enumerable.Range(1, 12).Select(seed => new object[] { seed });

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Of_small_projects_just_that_is_proven_which_trying_all_shows(int seed)
    {
        for (var variant = 0; variant < 25; variant++)
        {
            var project = Small(new Random((1000 * seed) + variant));
            var builder = new Builder(Network.Of(project));
            Assert.True(ProofSearch.CanTake(builder));
            var expected = new Exhaustive(project, Horizon).Finish;
            Assert.Null(Earliest(project, builder, (expected ?? Horizon) - 1));
            if (expected is { } finish)
                Assert.Equal(expected, Earliest(project, builder, finish + 5));
        }
    }

    [SharedDataTheory]
    [InlineData("j30")]
    public void The_published_optimum_is_found_and_no_less_is_possible(string set)
    {
        var optima = Optima(set).Where((_, place) => place % 8 == 3).ToList();
        Assert.Equal(60, optima.Count);
        foreach (var (name, optimum) in optima)
        {
            var project = PublishedProject.Parse(SharedData.Read("rcpsp_sm", set, name), ".sm");
            Assert.Equal((name, (int?)optimum), (name, Earliest(project, new(Network.Of(project)), optimum + 3)));
        }
    }

    /// <summary>A clause that excluded it would make proofs false.</summary>
    [SharedDataTheory]
    [InlineData("j60", "j6046_9.sm", 69)]
    [InlineData("j60", "j6025_8.sm", 99)]
    public void No_learned_clause_excludes_a_schedule_that_breeding_found(string set, string name, int best)
    {
        var builder = new Builder(Network.Of(PublishedProject.Parse(SharedData.Read("rcpsp_sm", set, name), ".sm")));
        var first = new FirstSchedule(builder, new Random(1));
        first.Run(200, best);
        var breeding = new GeneticSearch(builder, first.Best!, new Random(1), population: 100);
        breeding.Run(best, 600_000);
        var known = breeding.Makespan;
        // Seeds whose search does not come upon a schedule before it has learned enough.
        foreach (var seed in Enumerable.Range(5, 8))
        {
            var exchange = new Exchange(2);
            using var stop = new CancellationTokenSource();
            var search = Search(builder, known, exchange, seed: seed);
            Assert.False(search.Run(() => search.Conflicts > 5000 ? Stop(stop, known) : known, None, _ => stop.Cancel(), stop.Token));
            var learned = exchange.Hear(listener: 1, known);
            Assert.True(learned.Count > 300, $"seed {seed}: {learned.Count}");
            foreach (var clause in learned)
                Assert.Contains(clause.Statements, packed => Holds(new(packed), breeding.Best));
        }
    }

    [SharedDataTheory]
    [InlineData("j60", "j6037_6.sm", 102)]
    public void One_that_hears_what_another_learned_proves_the_same_sooner(string set, string name, int optimum)
    {
        var builder = new Builder(Network.Of(PublishedProject.Parse(SharedData.Read("rcpsp_sm", set, name), ".sm")));
        var exchange = new Exchange(2);
        var searches = Enumerable.Range(0, 2).Select(place => Search(builder, optimum - 1, exchange, place)).ToList();
        foreach (var search in searches)
            Assert.True(search.Run(() => optimum - 1, None, _ => Assert.Fail("earlier than published"), CancellationToken.None));
        Assert.True(searches[1].Conflicts < searches[0].Conflicts / 2, $"{searches[1].Conflicts} of {searches[0].Conflicts}");
    }

    [Fact]
    public void Nobody_is_told_again_what_he_told_nor_what_he_heard()
    {
        var exchange = new Exchange(2);
        exchange.Tell(0, 9, [1, 2], 1);
        exchange.Tell(1, 9, [3, 4], 1);
        Assert.Equal([3, 4], Assert.Single(exchange.Hear(0, 9)).Statements);
        Assert.Empty(exchange.Hear(0, 9));
    }

    [Fact]
    public void What_was_learned_of_a_finish_is_heard_by_those_who_want_it_or_an_earlier_one()
    {
        var exchange = new Exchange(2);
        exchange.Tell(0, 8, [1, 2], 1);
        exchange.Tell(0, 9, [3, 4], 1);
        Assert.Equal([3, 4], Assert.Single(exchange.Hear(1, 9)).Statements);
        Assert.Equal([1, 2], Assert.Single(exchange.Hear(1, 7)).Statements);
    }

    [SharedDataTheory]
    [InlineData("j60", "j6025_8.sm", 0)]
    [InlineData("j60", "j6025_8.sm", 3)]
    public void What_is_likely_is_tried_first_as_much_earlier_as_it_is_too_late(string set, string name, int late)
    {
        var builder = new Builder(Network.Of(PublishedProject.Parse(SharedData.Read("rcpsp_sm", set, name), ".sm")));
        var first = new FirstSchedule(builder, new Random(1));
        first.Run(200, 0);
        int[] likely = [.. first.Best!.Select(start => start + late)];
        int[]? found = null;
        using var stop = new CancellationTokenSource();
        var search = Search(builder, builder.Makespan(first.Best!), new(1));
        search.Run(() => builder.Makespan(first.Best!), () => likely, starts => (found, _) = (starts, Stop(stop, 0)), stop.Token);
        Assert.Equal(0, search.Conflicts);
        Assert.Equal(first.Best, found);
    }

    [Fact]
    public void Projects_with_working_hours_are_left_to_others() =>
        Assert.False(ProofSearch.CanTake(new(Network.Of(new([new("a", 2, [1], Pace.Pausing)], [new("bench", 1, [new(0, 9)])], [])))));

    /// <summary>The earliest finish up to a time, by a search that goes on until it has proven that there is nothing earlier.</summary>
    private static int? Earliest(Project project, Builder builder, int most)
    {
        if (builder.Earliest is null || builder.Latest(most) is null)
            return null;
        int? best = null;
        var isProven = Search(builder, most, new(1)).Run(() => best - 1 ?? most, None, starts =>
        {
            var schedule = builder.ToSchedule(starts);
            Assert.Empty(ScheduleCheck.Of(project, schedule));
            Assert.True(schedule.Makespan <= (best - 1 ?? most));
            best = schedule.Makespan;
        }, CancellationToken.None);
        Assert.True(isProven);
        return best;
    }

    private static ProofSearch Search(Builder builder, int most, Exchange exchange, int place = 0, int seed = 1) =>
        new(builder.Network, builder.Earliest!, builder.Latest(most)!, seed, exchange, place);

    private static int[]? None() => null;

    private static int Stop(CancellationTokenSource stop, int finish)
    {
        stop.Cancel();
        return finish;
    }

    private static bool Holds(Statement statement, int[] starts)
    {
        var start = starts[statement.Side / 2];
        return statement.Side % 2 == 0 ? start >= statement.Least : -start >= statement.Least;
    }

    private static Project Small(Random random)
    {
        Resource[] resources = [new("a", random.Next(1, 4)), new("b", random.Next(2, 6))];
        Activity[] activities = [.. Enumerable.Range(0, 4).Select(i => new Activity($"{i}", random.Next(0, 6),
            [.. resources.Select(resource => random.Next(0, resource.Capacity + 1))], Earliest: random.Next(3) == 0 ? random.Next(8) : 0,
            LatestFinish: random.Next(6) == 0 ? random.Next(10, 22) : null))];
        Lag[] lags = [.. Enumerable.Range(0, 4).Select(_ => (Before: random.Next(3), Least: random.Next(-2, 5))).Select(lag =>
            new Lag(lag.Before, random.Next(lag.Before + 1, 4), lag.Least, random.Next(3) == 0 ? lag.Least + random.Next(6) : null,
                random.Next(2) == 0 ? Anchor.Start : Anchor.Finish))];
        return new([.. activities], [.. resources], [.. lags]);
    }

    private static IEnumerable<(string Name, int Finish)> Optima(string set) => SharedData.Finishes("rcpsp_sm", set)
        .Where(row => row.Value.Low == row.Value.High).Select(row => (row.Key, row.Value.High!.Value));
}
