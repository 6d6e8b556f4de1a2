using Refettle.Timeline.Scheduling.Proving;

namespace Refettle.Solvers.Tests.Scheduling;

/// <summary>On which side of a time a start is tried first.</summary>
public sealed class BranchingTests
{
    private readonly Bounds _bounds = new([0, 0], [10, 10]);
    private readonly Branching _branching;

    public BranchingTests() => _branching = new(_bounds, 0.85, new Random(1));

    [Fact]
    public void Late_comes_before_early_when_nothing_is_likely() => Assert.Equal([10, 10], TriedFirst());

    [Fact]
    public void What_is_likely_comes_first()
    {
        _branching.LookNear([2, 7]);
        Assert.Equal([2, 7], TriedFirst());
    }

    [Fact]
    public void What_the_search_came_furthest_with_takes_the_place_of_what_was_likely()
    {
        _branching.LookNear([2, 7]);
        Reach(Statement.From(0, 6), Statement.Until(1, 4));
        Reach(Statement.From(0, 8));
        Assert.Equal([6, 4], TriedFirst());
    }

    [Fact]
    public void What_is_likely_next_has_to_be_come_nearer_anew()
    {
        _branching.LookNear([2, 7]);
        Reach(Statement.From(0, 9));
        _branching.LookNear([3, 1]);
        Reach(Statement.From(0, 5));
        Assert.Equal([5, 1], TriedFirst());
    }

    [Fact]
    public void The_sum_of_all_sides_is_kept_through_steps_and_back()
    {
        var random = new Random(1);
        for (var step = 0; step < 1000; step++)
        {
            if (_bounds.Level > 0 && random.Next(3) == 0)
                _bounds.TakeBack(random.Next(_bounds.Level));
            else
                _bounds.Try(new(random.Next(4), random.Next(-10, 10)));
            Assert.Equal(_bounds.Values.ToArray().Sum(), _bounds.Sum);
        }
    }

    /// <summary>Tries something, from which nothing follows, asks for the next, tries that too, as else it would not be asked again, and
    /// takes all back.</summary>
    private void Reach(params Statement[] tried)
    {
        foreach (var statement in tried)
            _bounds.Try(statement);
        var asked = _branching.Next()!.Value;
        _bounds.Try(asked);
        _branching.TakeBack(_bounds.FirstAbove(0));
        _bounds.TakeBack(0);
    }

    /// <summary>Of each activity the start that is left when all questions are answered as they are tried.</summary>
    private int[] TriedFirst()
    {
        while (_branching.Next() is { } next)
            _bounds.Try(next);
        return [_bounds.Earliest(0), _bounds.Earliest(1)];
    }
}
