using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Judging;
using Refettle.Stuck;

namespace Refettle.Tests.Judging;

public sealed class VerdictPlannerTests
{
    private static readonly VerdictPlanner Planner = new(new AccessPlanner(new ReducedSolver()));

    /// <summary>By hand, at 30 an hour: getting at it 15 min (5 open, 6 close, 2 off, 2 on), a new one for 40 is 80 min
    /// more: 95; own work 180 + 15 is 195.</summary>
    [Fact]
    public void The_sums_are_those_done_by_hand()
    {
        var answer = Ask(Car("bracket", 40, Scarcity.Stocked) with { Estimates = [Known with { Work = new(180) }] });
        Assert.Equal(VerdictKind.Replace, answer.Suggested!.Kind);
        Assert.Equal(95, answer.Suggested.Total.Value);
        Assert.Equal(195, Option(answer, VerdictKind.Refurbish).Total.Value);
        Assert.NotNull(Option(answer, VerdictKind.Keep).Cannot);
    }

    /// <summary>Whether something was measured along with a word says nothing of how new the word is, nor do
    /// capitals of how new a reading is.</summary>
    [Fact]
    public void The_newest_word_of_a_scale_counts_and_the_newest_reading_of_a_quantity()
    {
        Finding Seen(string word, MeasuredValue? reading = null) =>
            new() { Of = "part damper", Scale = "damper", Word = word, Reading = reading };
        Condition Of(params Finding[] findings) =>
            Condition.Of(new()
            {
                Id = "car",
                Name = "Car",
                Findings = [.. findings],
                Limits = [new("part damper", "pressure", 50, null, "N", Origin.User, null)]
            }, "part damper");
        MeasuredValue Pressure(string what, decimal value) => new(what, [value], "N", null, 1);
        Assert.Equal(Severeness.Sound, Of(Seen("drips", new("stroke", [3], "mm", null, 1)), Seen("even")).Worst);
        Assert.Equal(Severeness.Used, Of(Seen("drips"), Seen("even", Pressure("pressure", 90))).Worst);
        var again = Of(Seen("even", Pressure("Pressure", 10)), Seen("even", Pressure("pressure", 90)));
        Assert.Equal((Severeness.Used, 1), (again.Worst, again.Newest.Count));
    }

    [Fact]
    public void A_date_that_the_new_one_misses_turns_to_own_work()
    {
        var car = Car("bracket", 40, Scarcity.Stocked) with { Estimates = [Known with { LeadDays = 30 }] };
        Assert.Equal(VerdictKind.Replace, Ask(car).Suggested!.Kind);
        var late = Ask(car, days: 20);
        Assert.Equal(VerdictKind.Refurbish, late.Suggested!.Kind);
        Assert.Equal(10, Option(late, VerdictKind.Replace).Late);
    }

    [Fact]
    public void Access_that_is_planned_anyway_is_not_paid_again() =>
        Assert.Equal(80, Ask(Car("bracket", 40, Scarcity.Stocked), planned: [Fact.Off("bracket")]).Suggested!.Total.Value);

    [Fact]
    public void A_unique_part_is_never_to_be_replaced_and_keeps_its_warning()
    {
        var answer = Ask(Car("bracket", null, Scarcity.Unique));
        Assert.Equal(VerdictKind.Refurbish, answer.Suggested!.Kind);
        Assert.NotNull(answer.Warning);
    }

    /// <summary>Cleaning makes no drum narrower; an owner who knows what does enters the work.</summary>
    [Fact]
    public void What_is_past_its_limit_is_neither_kept_nor_cleaned_up()
    {
        var car = Car("rl-brake-drum", 40, Scarcity.Stocked) with
        {
            Findings = [new()
                { Of = "part rl-brake-drum", Scale = "brake-disc", Reading = new("inner diameter", [204.6m], "mm", null, 0.1m) }],
            Limits = [new("part rl-brake-drum", "inner diameter", null, 204, "mm", Origin.Maker, null)],
        };
        var answer = Ask(car, part: "rl-brake-drum");
        Assert.Equal(VerdictKind.Replace, answer.Suggested!.Kind);
        Assert.NotNull(Option(answer, VerdictKind.Keep).Cannot);
        Assert.Contains("its inner diameter is past the limit", Option(answer, VerdictKind.Refurbish).Cannot, StringComparison.Ordinal);
        Assert.Null(Option(Ask(car with { Estimates = [Known with { Part = "rl-brake-drum", Work = new(60) }] }, part: "rl-brake-drum"),
            VerdictKind.Refurbish).Cannot);
    }

    [Fact]
    public void Both_sides_of_a_pair_are_counted()
    {
        var answer = Ask(Car("rl-damper", 40, Scarcity.Stocked), part: "rl-damper");
        Assert.Equal(2, Option(answer, VerdictKind.Replace).Sums.Count(sum => sum.Money.Amount == 40));
        Assert.Contains(answer.Notes, note => note.StartsWith("Rr-damper", StringComparison.Ordinal));
    }

    [Fact]
    public void The_price_of_what_it_is_sold_with_counts()
    {
        var car = Car("bracket", 40, Scarcity.Stocked) with { Estimates = [Known with { SoldWith = "other" }] };
        Assert.Contains(Option(Ask(car), VerdictKind.Replace).Sums, sum => sum.Money.Amount == 200);
    }

    [Fact]
    public void The_owners_word_stays_beside_the_suggestion()
    {
        var answer = Ask(Car("bracket", 40, Scarcity.Stocked) with
        { Verdicts = [new("bracket", VerdictKind.Keep, DoneBy.Self, "it will do")] });
        Assert.Equal(VerdictKind.Replace, answer.Suggested!.Kind);
        Assert.Equal(VerdictKind.Keep, answer.Own!.Kind);
    }

    [Fact]
    public void Nothing_is_suggested_for_what_nobody_looked_at()
    {
        var answer = Ask(Car("bracket", 40, Scarcity.Stocked) with { Findings = [] });
        Assert.Null(answer.Suggested);
        Assert.Contains(answer.Notes, note => note.Contains("look first", StringComparison.Ordinal));
    }

    /// <summary>A dearer hour makes own work no cheaper against a bought part; a dearer part makes replacing no cheaper.</summary>
    [Fact]
    public void A_dearer_part_is_never_replaced_sooner()
    {
        var replaced = true;
        for (var price = 5; price < 200; price += 5)
        {
            var now = Ask(Car("bracket", price, Scarcity.Stocked)).Suggested!.Kind == VerdictKind.Replace;
            Assert.True(replaced || !now, $"{price}");
            replaced = now;
        }

        Assert.False(replaced);
    }

    /// <summary>By hand: one try, 50 min, sure: 45 beyond the 5 of the step. It weighs on all that take the part off,
    /// half on a worn one that stays.</summary>
    [Fact]
    public void What_removal_may_break_weighs_on_whatever_takes_the_part_off()
    {
        var ladders = new LadderSet([new()
            { Id = "bolt", Name = "Bolt", Kinds = [JointKind.Bolt],
                Rungs = [new() { Id = "cut", Says = "Cut", Tool = "saw", Takes = new(50), Odds = [1, 1, 1, 1, 1] }], Origin = "made up" }]);
        var car = Car("bracket", 40, Scarcity.Stocked) with { Findings = [new() { Of = "part bracket", Scale = "rust", Word = "C" }] };
        VerdictAnswer With(ValueList<Fact> planned, LadderSet? known) =>
            Planner.Of(car, new() { Parts = ["bracket"], Planned = planned, Ladders = known })[0];
        decimal More(VerdictKind kind, ValueList<Fact> planned) =>
            Option(With(planned, ladders), kind).Total.Value - Option(With(planned, null), kind).Total.Value;
        Assert.Equal((45, 45, 22.5m), (More(VerdictKind.Replace, []), More(VerdictKind.Refurbish, []), More(VerdictKind.Keep, [])));
        Assert.Equal(0, More(VerdictKind.Replace, [Fact.Off("bracket")]));
    }

    /// <summary>Each thing that is said to count moves the answer: the suggestion, or the sum of what it is about.</summary>
    [Fact]
    public void Everything_that_is_said_to_count_moves_the_answer()
    {
        var car = Car("bracket", 40, Scarcity.Stocked);
        decimal Sum(Car of, VerdictKind kind) => Option(Ask(of), kind).Total.Value;
        Assert.Equal(VerdictKind.Keep,
            Ask(car with { Findings = [new() { Of = "part bracket", Scale = "rust", Word = "A" }] }).Suggested!.Kind);
        Assert.Null(Option(Ask(car), VerdictKind.Replace).Cannot);
        Assert.NotNull(Option(Ask(Car("bracket", 40, Scarcity.Discontinued)), VerdictKind.Replace).Cannot);
        Assert.NotNull(Option(Ask(Car("bracket", 40, Scarcity.Unique)), VerdictKind.Replace).Cannot);
        Assert.Equal(20 * 2, Sum(Car("bracket", 60, Scarcity.Stocked), VerdictKind.Replace) - Sum(car, VerdictKind.Replace));
        Assert.Equal(60,
            Sum(car with { Estimates = [Known with { Work = new(240) }] }, VerdictKind.Refurbish)
                - Sum(car with { Estimates = [Known with { Work = new(180) }] }, VerdictKind.Refurbish));
        Assert.Equal(VerdictKind.Refurbish, Ask(car with { Estimates = [Known with { Work = new(10) }] }).Suggested!.Kind);
        Assert.Equal(28 - 7,
            Option(Ask(Car("bracket", 40, Scarcity.UsedOnly)), VerdictKind.Replace).Days - Option(Ask(car), VerdictKind.Replace).Days);
        Assert.Equal(160 * 2,
            Sum(car with { Estimates = [Known with { SoldWith = "other" }] }, VerdictKind.Replace) - Sum(car, VerdictKind.Replace));
    }

    private static PartEstimate Known { get; } = new("bracket", null, null, null, null, null, null, null, null, null);

    private static VerdictOption Option(VerdictAnswer answer, VerdictKind kind) =>
        answer.Options.First(option => option.Kind == kind && option.By == DoneBy.Self);

    private static VerdictAnswer Ask(Car car, decimal? days = null, ValueList<Fact>? planned = null, string part = "bracket") =>
        Planner.Of(car, new() { Parts = [part], DaysLeft = days, Planned = planned ?? [] })[0];

    private static Car Car(string id, int? price, Scarcity scarcity)
    {
        var other = Spots.MirrorOf(id) is var mirrored && mirrored != id ? mirrored : "other";
        return new()
        {
            Id = "car",
            Name = "Car",
            Structure = new()
            {
                Parts =
                [
                    new() { Id = "shell", Name = "Shell", Fixed = true },
                    new() { Id = id, Name = char.ToUpperInvariant(id[0]) + id[1..], Price = price is { } money ? new(money) : null,
                        Scarcity = scarcity, Out = new() { Off = new(2), On = new(2) } },
                    new() { Id = other, Name = char.ToUpperInvariant(other[0]) + other[1..], Price = new(200) },
                ],
                Joints = [new()
                    { Id = "bolt", Holds = [id, "shell"], Ways = [new() { Id = "w", Tool = "spanner", Open = new(5), Close = new(6) }] },
                    new() { Id = "bolt2", Holds = [other, "shell"],
                        Ways = [new() { Id = "w", Tool = "spanner", Open = new(1), Close = new(1) }] }],
            },
            Findings = [new() { Of = $"part {id}", Scale = "rust", Word = "D" }],
        };
    }
}
