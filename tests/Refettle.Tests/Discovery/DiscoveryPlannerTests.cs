using CsCheck;
using NodaTime;
using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Discovery;
using Refettle.Logbook;
using Refettle.Stock;
using Refettle.Stuck;
using Refettle.Tests.Logbook;

namespace Refettle.Tests.Discovery;

public sealed class DiscoveryPlannerTests
{
    private static readonly DiscoveryPlanner Planner = new(new AccessPlanner(new ReducedSolver()), null);
    private static readonly MeansSet ReadyInMay = new(new(null, null, new(2026, 5, 20), null));
    private static readonly Found Drips = new(new() { Of = "part damper", Scale = "damper", Word = "drips" });
    private static readonly Found Even = new(new() { Of = "part damper", Scale = "damper", Word = "even" });

    private static readonly LadderSet Ladders = new([
        new() { Id = "bolt", Name = "Bolt", Kinds = [JointKind.Bolt], Rungs = [Rung("spanner", 10, 0.5), Rung("cut", 60, 1)],
            Origin = "made up" },
        new() { Id = "stub", Name = "Stub", Kinds = [JointKind.Bolt], Condition = JointCondition.SnappedFlush,
            Rungs = [Rung("drill", 90, 1)], Origin = "made up" },
    ]);

    /// <summary>By hand: the damper's two bolts, 5 min to open and 6 to close each; a stocked part without a number is a week
    /// away (common practice, no source).</summary>
    [Fact]
    public void A_bad_part_comes_off_and_into_the_basket_with_its_day()
    {
        var difference = Told([ReadyInMay], [Drips]);
        Assert.Equal([new("damper", VerdictKind.Replace)], difference.Suggested);
        Assert.Equal(22, difference.Plan!.Work);
        Assert.Contains(Fact.Off("damper"), difference.Plan.More.Select(step => step.Fact));
        Assert.Empty(difference.Plan.Less);
        Assert.Contains(new PieceAhead("part damper", "damper", 1, 1, new(2026, 5, 13)), difference.Basket!.More);
        var says = DifferenceWords.Of(SmallCar.After().Car, difference);
        Assert.Contains("as suggested (replace damper", says, StringComparison.Ordinal);
        Assert.Contains("+1 damper (order by Wed 2026-05-13 at the latest)", says, StringComparison.Ordinal);
        Assert.Contains("+0.4 h", says, StringComparison.Ordinal);
    }

    [Fact]
    public void The_owners_word_takes_back_what_was_only_suggested()
    {
        var found = Told([ReadyInMay], [Drips]);
        var kept = Told([ReadyInMay, Drips], [new VerdictGiven(new("damper", VerdictKind.Keep, DoneBy.Self, null))]);
        Assert.Equal(found.Plan!.More, kept.Plan!.Less);
        Assert.Equal(found.Basket!.More, kept.Basket!.Less);
        Assert.Empty(kept.Suggested);
    }

    [Fact]
    public void A_good_part_changes_nothing()
    {
        var difference = Told([ReadyInMay], [Even]);
        Assert.True(difference.IsNothing);
        Assert.Equal("Changes nothing in plan, basket and scope.", DifferenceWords.Of(SmallCar.After().Car, difference));
    }

    /// <summary>By hand: expected before 10 + 0.5 × 60 = 40 min less the step's own 5, at even odds; broken off
    /// level it is the drill's 90 less 5.</summary>
    [Fact]
    public void A_bolt_that_breaks_costs_its_tries_and_a_new_bolt()
    {
        Happening[] before = [Drips, new Tried(new("damper-body", "spanner", null, false, null))];
        var difference = Told(before, [new Tried(new("damper-body", "spanner", JointCondition.SnappedFlush, false, null))]);
        Assert.Equal(90 - 60, difference.Plan!.Tries);
        Assert.Contains(difference.Basket!.More, piece => piece is { Thing: "joint damper-body", Count: 1 });
    }

    /// <summary>Differences one after the other add up to the difference between the first and the last.</summary>
    [Fact]
    public void Differences_add_up() =>
        Gen.Select(Happenings.Array[0, 3], Happenings.Array[1, 3], Happenings.Array[1, 3]).Sample((first, second, third) =>
    {
        var (one, two, all) = (Told(first, second), Told([.. first, .. second], third), Told(first, [.. second, .. third]));
        Assert.Equal(all.Plan!.Work, one.Plan!.Work + two.Plan!.Work);
        Assert.Equal(all.Plan.Tries, one.Plan.Tries + two.Plan.Tries);
        Assert.Equal(Pieces(all), Pieces(one) + Pieces(two));
    }, iter: 60);

    [Fact]
    public void The_check_finds_whatever_is_told_wrongly()
    {
        var step = new StepAhead(Fact.Off("damper"), "", new(4));
        Outlook Ahead(int steps, int pieces, string job) => new(
            new(PlanStatus.Optimal, Enumerable.Repeat(step, steps).ToValueList(), new(steps)),
            new([new("part damper", "damper", pieces, pieces, null)]), new(PlanStatus.Optimal, [job], new(pieces), new(steps), pieces));
        var (before, after) = (Ahead(1, 1, "a"), Ahead(3, 2, "b"));
        var right = OutlookDifference.Between(before, after, [], []);
        Assert.Empty(DifferenceCheck.Of(before, right, after));
        Assert.All(
        [
            right with { Plan = right.Plan! with { More = [step] } },
            right with { Plan = right.Plan with { Less = [step] } },
            right with { Plan = right.Plan with { Work = 1 } },
            right with { Plan = right.Plan with { Tries = 0 } },
            right with { Plan = right.Plan with { Status = PlanStatus.Impossible } },
            right with { Plan = null },
            right with { Basket = right.Basket! with { Less = [] } },
            right with { Basket = null },
            right with { Scope = right.Scope! with { In = [] } },
            right with { Scope = right.Scope with { Gain = 0 } },
            right with { Scope = null },
        ], wrong => Assert.NotEmpty(DifferenceCheck.Of(before, wrong, after)));
    }

    private static readonly Gen<Happening> Happenings = Gen.OneOf(
        Gen.Select(OneOf("damper", "axle", "wheel", "tank"), OneOf("A", "B", "C", "D"))
            .Select((part, grade) => (Happening)new Found(new() { Of = $"part {part}", Scale = "rust", Word = grade })),
        Gen.Select(OneOf("damper", "axle", "wheel", "tank"), Gen.Enum<VerdictKind>())
            .Select((part, kind) => (Happening)new VerdictGiven(new(part, kind, DoneBy.Self, null))),
        Gen.Select(OneOf("damper-body", "axle-body", "wheel-axle"),
            OneOf<JointCondition?>(null, JointCondition.SnappedFlush, JointCondition.Freed))
            .Select((joint, becomes) => (Happening)new Tried(new(joint, "spanner", becomes, false, null))));

    private static Gen<T> OneOf<T>(params T[] all) => Gen.Int[0, all.Length - 1].Select(number => all[number]);

    private static int Pieces(OutlookDifference difference) =>
        difference.Basket!.More.Sum(piece => piece.Count) - difference.Basket.Less.Sum(piece => piece.Count);

    private static OutlookDifference Told(Happening[] before, Happening[] discovered) =>
        Planner.Of(Ask(before), Ask([.. before, .. discovered]));

    private static OutlookQuestion Ask(Happening[] happenings) => new()
    {
        History = SmallCar.After(happenings),
        Shelf = Shelf.Empty,
        Ladders = Ladders,
        Now = Instant.FromUtc(2026, 3, 1, 9, 0),
    };

    private static Rung Rung(string id, int minutes, double odds) =>
        new() { Id = id, Says = id, Tool = id, Takes = new(minutes), Odds = [odds, odds, odds, odds, odds] };
}
