using Refettle.Timeline.Scheduling.Proving;

namespace Refettle.Solvers.Tests.Scheduling;

/// <summary>Which learned clauses are forgotten: those of few levels never, and what counts is the fewest at which one served (Audemard
/// and Simon, Predicting learnt clauses quality in modern SAT solvers, IJCAI 2009).</summary>
public sealed class ClausesTests
{
    private const int Pairs = 20;

    [Fact]
    public void What_served_at_few_levels_is_not_forgotten()
    {
        var (bounds, clauses) = Learned(out var places);
        clauses.NoteLevels(places[^1], 2);
        Assert.True(clauses.Forget());
        Assert.Equal(Pairs / 2, clauses.Count);
        Assert.True(StillFollows(bounds, clauses, Pairs - 1));
        Assert.False(StillFollows(bounds, clauses, Pairs - 2));
    }

    [Fact]
    public void More_levels_than_before_do_not_count()
    {
        var (bounds, clauses) = Learned(out var places);
        clauses.NoteLevels(places[^1], 2);
        clauses.NoteLevels(places[^1], 8);
        Assert.True(clauses.Forget());
        Assert.True(StillFollows(bounds, clauses, Pairs - 1));
    }

    [Fact]
    public void Levels_are_those_at_which_statements_became_false()
    {
        var bounds = Wide();
        Assert.True(bounds.TrySet(Statement.From(0, 5), default));
        bounds.Try(Statement.From(1, 5));
        Assert.True(bounds.TrySet(Statement.From(2, 5), default));
        bounds.Try(Statement.From(3, 5));
        int[] clause = [.. Enumerable.Range(0, 4).Select(activity => Statement.Until(activity, 4).Packed)];
        var levels = new FalseLevels(bounds);
        Assert.Equal(2, levels.Count(clause));
        Assert.Equal([0, 1, 1, 2], clause.Select(packed => levels.Of(new(packed))));
        Assert.Equal(1, levels.Count(clause.AsSpan(0, 3)));
    }

    private static Bounds Wide() => new(new int[2 * Pairs], [.. Enumerable.Repeat(10, 2 * Pairs)]);

    /// <summary>Of each two activities that one starts at 5 or later.</summary>
    private static (Bounds Bounds, Clauses Clauses) Learned(out int[] places)
    {
        var bounds = Wide();
        var clauses = new Clauses(bounds);
        places = [.. Enumerable.Range(0, Pairs).Select(pair => clauses.Add(
            [Statement.From(2 * pair, 5).Packed, Statement.From((2 * pair) + 1, 5).Packed], levels: 9))];
        return (bounds, clauses);
    }

    private static bool StillFollows(Bounds bounds, Clauses clauses, int pair)
    {
        var until = Statement.Until(2 * pair, 4);
        var before = bounds[until.Side];
        Assert.True(bounds.TrySet(until, default) && clauses.Follow(until.Side, before, until.Least));
        return bounds.Earliest((2 * pair) + 1) == 5;
    }
}
