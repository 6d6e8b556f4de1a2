using Refettle.Access;
using Refettle.CloseUp.Refit;
using Refettle.Logbook;
using Refettle.Tests.Timeline.Network;

namespace Refettle.Tests.CloseUp;

/// <summary>The order of a refit is that of the strip turned round where needs ask for it: common practice, no source.</summary>
public sealed class RefitTests
{
    private static readonly Structure Rear = new()
    {
        Zones = [new() { Id = "rear", Name = "Rear", Posture = "under" }],
        Parts =
        [
            new() { Id = "body", Name = "Body", Fixed = true },
            new() { Id = "axle", Name = "Rear axle", Zone = "rear" },
            new() { Id = "hose", Name = "Brake hose", Zone = "rear", Hazards = [Hazard.BrakeFluid] },
            new() { Id = "silencer", Name = "Silencer", Zone = "rear" },
            new() { Id = "strap", Name = "Earth strap", Zone = "rear", Side = Side.Left,
                Out = new() { Clear = [Fact.Reach("above-axle")] } },
        ],
        Joints =
        [
            Joint("link-bolt", JointKind.Bolt, ["axle", "body"]) with
                { AtRideHeight = true, SingleUse = true, Count = 2, Torque = new(90), Origin = Origin.Maker },
            Joint("union", JointKind.Pipe, ["hose", "axle"]),
            Joint("hanger", JointKind.Bolt, ["silencer", "body"]),
            Joint("strap-bolt", JointKind.Bolt, ["strap", "body"], Fact.Reach("above-axle")),
        ],
        Spaces = [new() { Id = "above-axle", Name = "Floor above the axle", Zone = "rear", ClosedBy = ["axle"] }],
    };

    [Fact]
    public void What_lies_behind_goes_on_first_and_the_space_gets_a_last_look()
    {
        var sheet = RefitPlanner.Of(Stripped());
        Assert.Empty(RefitCheck.Of(Stripped().Car, sheet));
        var order = sheet.Steps.Select(step => step.Fact).ToList();
        Assert.True(order.IndexOf(Fact.Open("strap-bolt")) < order.IndexOf(Fact.Off("axle")));
        Assert.True(order.IndexOf(Fact.Off("axle")) < order.IndexOf(Fact.Open("link-bolt")));
        var look = Assert.Single(sheet.Steps.Single(step => step.Fact == Fact.Off("axle")).LastLooks);
        Assert.Equal(("above-axle", false, "7"), (look.Space, look.IsPhotographed, look.Bags.Single().Code));
    }

    [Fact]
    public void What_closes_a_space_together_with_others_gets_the_last_look_too()
    {
        var unit = new Structure { SubAssemblies = [new() { Id = "axle-unit", Name = "Axle with its hose", Members = ["axle", "hose"] }] };
        var sheet = RefitPlanner.Of(History([.. Begin(), new StructureAdded("sheet", unit, []),
            new StepDone(Fact.Open("link-bolt"), null, null), new StepDone(Fact.Off("axle-unit"), null, null)]));
        Assert.Equal("above-axle", Assert.Single(sheet.Steps.Single(step => step.Fact == Fact.Off("axle-unit")).LastLooks).Space);
    }

    /// <summary>It stands on its stands, and its sill turns out to be rust.</summary>
    [Fact]
    public void Nobody_is_sent_back_under_what_stands_on_a_weak_part_without_a_word()
    {
        var stands = new Structure
        {
            States = [new() { Id = "on-stands", Name = "On stands", IsStance = true, Supports = ["body"], Ways = [] },
                new() { Id = "on-wheels", Name = "On its wheels", IsStance = true, Ways = [] }],
        };
        const string Weak = "Not under it: Body was found too weak to carry the car, and the car stands on it now (On stands).";
        RefitSheet Back(params Happening[] then) =>
            RefitPlanner.Of(History([.. Begin(), new StructureAdded("sheet", stands, []), .. Strip().Skip(2), .. then]));
        var weak = Back(new StanceTaken("on-stands"), new SoundnessJudged("body", false)).Steps.Where(step => step.Stance is null).ToList();
        Assert.NotEmpty(weak);
        Assert.All(weak, step => Assert.Equal(Weak, step.Cautions[0]));
        Assert.All(Back(new StanceTaken("on-wheels"), new SoundnessJudged("body", false)).Steps.Concat(Back(new StanceTaken("on-stands")).Steps),
            step => Assert.DoesNotContain(Weak, step.Cautions));
    }

    [Fact]
    public void A_step_says_what_the_strip_remembers_where_its_parts_are_and_how_tight()
    {
        var sheet = RefitPlanner.Of(Stripped());
        var bolt = sheet.Steps.Single(step => step.Fact == Fact.Open("link-bolt"));
        Assert.Equal(["undone, spanner, 12 min", "head to the outside"], bolt.Remembers.Select(line => line.Says));
        Assert.Equal((2, true),
            (bolt.Card!.NewFasteners, bolt.Card.Says.Any(says => says.Contains("only snug now", StringComparison.Ordinal))));
        var strap = sheet.Steps.Single(step => step.Fact == Fact.Open("strap-bolt"));
        Assert.Equal((Side.Left, "7"), (strap.Side, strap.Bags.Single().Code));
        Assert.Equal("9", Assert.Single(sheet.Leftover).Code);
    }

    [Fact]
    public void What_was_opened_of_the_brakes_is_bled_even_when_it_is_closed_again()
    {
        Assert.Equal(["union"], RefitPlanner.Of(Stripped()).Bleeding.Select(joint => joint.Id));
        Assert.Contains(RefitPlanner.Of(Stripped()).Checks, check => check.Id == "check.bleed");
        var closed = History([.. Strip(), new StepReversed(Fact.Off("axle"), null), new StepReversed(Fact.Off("hose"), null),
            new StepReversed(Fact.Open("union"), null)]);
        Assert.Equal(["union"], RefitPlanner.Of(closed).Bleeding.Select(joint => joint.Id));
    }

    [Fact]
    public void Of_parts_that_wait_for_nothing_the_last_off_goes_on_first()
    {
        var first = History([.. Begin(), new StepDone(Fact.Off("silencer"), null, null), new StepDone(Fact.Off("hose"), null, null)]);
        Assert.Equal(Fact.Off("hose"), RefitPlanner.Of(first).Steps.First(step => step.Fact.Kind == FactKind.Off).Fact);
        var second = History([.. Begin(), new StepDone(Fact.Off("hose"), null, null), new StepDone(Fact.Off("silencer"), null, null)]);
        Assert.Equal(Fact.Off("silencer"), RefitPlanner.Of(second).Steps.First(step => step.Fact.Kind == FactKind.Off).Fact);
    }

    /// <summary>The silencer came off last and is at a shop: what does not wait for it goes on first.</summary>
    [Fact]
    public void What_waits_for_a_part_that_is_not_here_comes_last_and_says_so()
    {
        var history = History([.. Begin(), new StepDone(Fact.Open("union"), null, null), new StepDone(Fact.Off("hose"), null, null),
            new StepDone(Fact.Open("hanger"), null, null), new StepDone(Fact.Off("silencer"), null, null)]);
        var sheet = RefitPlanner.Of(history, "silencer");
        Assert.Empty(RefitCheck.Of(history.Car, sheet));
        Assert.Equal([Fact.Off("hose"), Fact.Open("union"), Fact.Off("silencer"), Fact.Open("hanger")],
            sheet.Steps.Select(step => step.Fact));
        Assert.Equal(["", "", "silencer", "silencer"], sheet.Steps.Select(step => string.Join(' ', step.WaitsFor)));
        Assert.All(RefitPlanner.Of(history).Steps, step => Assert.Empty(step.WaitsFor));
    }

    [Fact]
    public void A_state_is_taken_back_in_words_of_what_is_done()
    {
        var tank = new State
        {
            Id = "fuel-drained",
            Name = "Fuel tank drained",
            Ways = [new() { Id = "pump", Tool = "pump", Open = new(5), Close = new(5) }]
        };
        var drained = History([.. Begin(),
            new StructureAdded("sheet", new() { States = [tank, tank with { Id = "odd", Name = "Odd" }] }, []),
            new StepDone(Fact.State("fuel-drained"), null, null), new StepDone(Fact.State("odd"), null, null)]);
        Assert.Equal(["Fill the fuel tank", "Undo: Odd"],
            RefitPlanner.Of(drained).Steps.Select(step => step.Says).Order(StringComparer.Ordinal));
    }

    /// <summary>Only the drum is said to be off: by the description a plug had to come out first, and it is a
    /// member of the whole corner too.</summary>
    [Fact]
    public void What_was_marked_off_before_what_it_needs_is_fitted_all_the_same()
    {
        var corner = new Structure
        {
            Parts = [new() { Id = "drum", Name = "Drum", Zone = "rear" }, new() { Id = "hub", Name = "Hub", Zone = "rear" },
                new() { Id = "plug", Name = "Plug", Zone = "rear" }],
            Joints =
            [
                Joint("drum-on-hub", JointKind.Seat, ["drum", "hub"], Fact.Off("plug")),
                Joint("plug-clip", JointKind.Clip, ["plug", "body"]),
                Joint("hub-bolts", JointKind.Bolt, ["hub", "body"]),
            ],
            SubAssemblies = [new() { Id = "corner", Name = "Corner", Members = ["drum", "hub"] }],
        };
        var history = History([.. Begin(), new StructureAdded("sheet", corner, []), new StepDone(Fact.Off("drum"), null, null)]);
        var sheet = RefitPlanner.Of(history);
        Assert.Empty(RefitCheck.Of(history.Car, sheet));
        Assert.Equal([Fact.Off("drum"), Fact.Open("drum-on-hub")], sheet.Steps.Select(step => step.Fact));
    }

    [Fact]
    public void A_car_that_is_whole_has_nothing_to_put_back() =>
        Assert.Empty(RefitPlanner.Of(History(Begin())).Steps);

    [Fact]
    public void Random_cars_taken_apart_go_together_by_their_sheets()
    {
        var (put, free) = (0, 0);
        foreach (var seed in Enumerable.Range(0, 300))
        {
            if (RandomNetworks.Make(seed, Apart.ByPlan) is not { } made)
                continue;
            var sheet = RefitPlanner.Of(new(made.Question.Car, [], []));
            Assert.Empty(RefitCheck.Of(made.Question.Car, sheet));
            put += sheet.Steps.Count;
            Assert.Equal(made.Question.Car.Structure.Spaces
                .Where(space => space.ClosedBy.Any(part => new CarStanding(made.Question.Car).IsTrue(Fact.Off(part))))
                .Select(space => space.Id).Order(),
                sheet.Steps.SelectMany(step => step.LastLooks).Select(look => look.Space).Distinct().Order());
            if (sheet.Steps.Select(step => step.Fact)
                .FirstOrDefault(fact => fact.Kind == FactKind.Off
                    && made.Question.Car.Structure.Parts.Any(part => part.Id == fact.Subject)) is not { Subject: { } away })
                continue;
            var without = RefitPlanner.Of(new(made.Question.Car, [], []), away);
            Assert.Empty(RefitCheck.Of(made.Question.Car, without));
            var waits = without.Steps.Select(step => step.WaitsFor.Count > 0).ToList();
            Assert.Equal(waits.Order(), waits);
            Assert.Equal(sheet.Steps.Select(step => step.Fact).Order(), without.Steps.Select(step => step.Fact).Order());
            free += waits.Count(one => !one);
        }

        Assert.True(put > 60 && free > 20, $"{put}, {free} of them before what waits");
    }

    [Fact]
    public void The_check_sees_a_step_left_out_doubled_or_too_late()
    {
        var (car, sheet) = (Stripped().Car, RefitPlanner.Of(Stripped()));
        Assert.NotEmpty(RefitCheck.Of(car, sheet with { Steps = sheet.Steps.Skip(1).ToValueList() }));
        Assert.NotEmpty(RefitCheck.Of(car, sheet with { Steps = [.. sheet.Steps, sheet.Steps[0]] }));
        Assert.NotEmpty(RefitCheck.Of(car, sheet with { Steps = sheet.Steps.Reverse().ToValueList() }));
    }

    private static CarHistory Stripped() => History(Strip());

    private static Happening[] Begin() => [new CarOpened("Heron", 1988, "EUR"), new StructureAdded("sheet", Rear, [])];

    private static Happening[] Strip() =>
    [
        .. Begin(), new StepDone(Fact.Open("link-bolt"), "spanner", new(12)), new Noted("head to the outside", "joint link-bolt"),
        new StepDone(Fact.Open("union"), null, null),
        new StepDone(Fact.Off("axle"), null, null), new StepDone(Fact.Open("strap-bolt"), null, null),
        new StepDone(Fact.Off("strap"), null, null),
        new BagPacked("7", "one bolt, toothed washer", ["joint strap-bolt"], null), new BagPacked("9", "three clips", [], null),
    ];

    private static CarHistory History(Happening[] happenings)
    {
        var writer = new LogWriter("bench", TimeProvider.System, System.Security.Cryptography.RandomNumberGenerator.Create());
        return CarHistory.Of("heron", writer.Next("heron", new(null, []), happenings));
    }

    private static Joint Joint(string id, JointKind kind, ValueList<string> holds, params ValueList<Fact> clear) =>
        new()
        {
            Id = id,
            Kind = kind,
            Holds = holds,
            Ways = [new() { Id = "spanner", Tool = "spanner", Open = new(5), Close = new(6), Clear = clear }]
        };
}
