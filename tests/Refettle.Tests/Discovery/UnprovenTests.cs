using NodaTime;
using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Discovery;
using Refettle.Logbook;
using Refettle.Stock;
using Refettle.Stuck;
using Refettle.Tests.Logbook;

namespace Refettle.Tests.Discovery;

/// <summary>A plan that is only the best found so far differs from a proven one by how far the
/// search came, not by what was found.</summary>
public sealed class UnprovenTests
{
    private static readonly Job Tank = new() { Id = "tank", Name = "Tank", Wish = Wish.Must, Goals = [Fact.Off("tank")] };

    /// <summary>The first plan reached is that before the discovery, the second that after it.</summary>
    [Theory]
    [InlineData(true, true, true)]
    [InlineData(true, false, false)]
    [InlineData(false, true, false)]
    [InlineData(false, false, false)]
    public void Steps_and_hours_are_told_only_between_plans_that_are_both_proven(bool before, bool after, bool isTold)
    {
        var difference = Told([before, after], [Verdict]);
        var says = DifferenceWords.Of(SmallCar.After().Car, difference);
        Assert.Equal(isTold, difference.Plan is not null);
        Assert.Equal(isTold, says.Contains(" h,", StringComparison.Ordinal) && says.Contains(" steps more", StringComparison.Ordinal));
        Assert.Equal(!isTold, says.Contains("Still to be worked out: steps and hours", StringComparison.Ordinal));
        Assert.Equal([new("part damper", "damper", 1, 1, null)], difference.Basket!.More);
        Assert.Contains("+1 damper", says, StringComparison.Ordinal);
    }

    /// <summary>What the work on the way uses up hangs on the plan: both of these find a way that destroys the wheel.</summary>
    [Fact]
    public void Only_pieces_that_are_asked_for_are_told()
    {
        Assert.Contains(Told([true, true], [Verdict], destroys: "wheel").Basket!.More, piece => piece.Thing == "part wheel");
        Assert.Equal(["part damper"], Told([true, false], [Verdict], destroys: "wheel").Basket!.More.Select(piece => piece.Thing));
    }

    [Fact]
    public void Where_nothing_a_plan_depends_on_changed_it_is_the_same_plan_however_good()
    {
        var difference = Told([false], [new Found(new() { Of = "part damper", Scale = "damper", Word = "even" })]);
        Assert.True(difference.IsNothing);
    }

    private static VerdictGiven Verdict => new(new("damper", VerdictKind.Replace, DoneBy.Self, null));

    private static OutlookDifference Told(bool[] proven, Happening[] found, string? destroys = null)
    {
        var planner = new DiscoveryPlanner(new Ended(new AccessPlanner(new ReducedSolver()), new(proven), destroys), null);
        return planner.Of(Ask([new JobEntered(Tank)]), Ask([new JobEntered(Tank), .. found]));
    }

    private static OutlookQuestion Ask(Happening[] happenings) =>
        new() { History = SmallCar.After(happenings), Shelf = Shelf.Empty, Ladders = new([]), Now = Instant.FromUtc(2026, 3, 1, 9, 0) };

    /// <summary>A planner whose search ends as it is told; a plan for more than the tank destroys a part.</summary>
    private sealed class Ended(IAccessPlanner inner, Queue<bool> proven, string? destroys) : IAccessPlanner
    {
        public Plan Reach(Car car, Question question, CancellationToken cancel = default)
        {
            var plan = inner.Reach(car, question, cancel);
            if (!question.Goals.Contains(Fact.Off("tank")))
                return plan;
            var steps = destroys is null || question.Goals.Count == 1
                ? plan.Steps
                : plan.Steps.Select(step => step with { Destroys = [destroys] }).ToValueList();
            return plan with { Steps = steps, Status = proven.Dequeue() ? PlanStatus.Optimal : PlanStatus.Feasible };
        }

        public (Cost Cost, bool Proven)? Price(Car car, Question question, CancellationToken cancel = default) =>
            inner.Price(car, question, cancel);

        public WithinAnswer Within(Car car, Question question, int most = 20, CancellationToken cancel = default) =>
            throw new NotSupportedException();

        public ValueList<OtherPlan> Others(Car car, Question question, int most = 3, CancellationToken cancel = default) =>
            throw new NotSupportedException();

        public Comparison Compare(Car car, Question first, ValueList<Fact> second, CancellationToken cancel = default) =>
            throw new NotSupportedException();
    }
}
