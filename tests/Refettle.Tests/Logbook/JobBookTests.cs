using Refettle.Logbook;

namespace Refettle.Tests.Logbook;

public sealed class JobBookTests
{
    private static readonly Job _axle = new()
    { Id = "axle", Name = "New bushes", Goals = [Fact.Free("axle")], With = ["tank"], Wish = Wish.Must };

    [Fact]
    public void A_job_with_the_same_name_replaces_the_first()
    {
        var car = SmallCar.After(new JobEntered(Jobs.Tank), new JobEntered(_axle),
            new JobEntered(Jobs.Tank with { Wish = Wish.Maybe })).Car;
        Assert.Equal([_axle, Jobs.Tank with { Wish = Wish.Maybe }], car.Jobs);
    }

    [Fact]
    public void A_dropped_job_leaves_nothing_behind()
    {
        var car = SmallCar.After(
            new JobEntered(Jobs.Tank), new JobEntered(_axle), new ScopeChosen(["axle", "tank"]), new JobDone("tank", null),
            new JobDropped("tank", null)).Car;
        Assert.Equal([_axle with { With = [] }], car.Jobs);
        Assert.Equal(["axle"], car.Scope!);
        Assert.Empty(car.JobsDone);
    }

    [Fact]
    public void A_struck_drop_brings_the_job_back_with_all_that_was_said_of_it()
    {
        var device = new TestDevice("bench");
        foreach (var happening in SmallCar.Opening)
            device.Write(happening);
        device.Write(new JobEntered(Jobs.Tank));
        device.Write(new JobDone("tank", new(80)));
        var before = device.History().Car;
        var drop = device.Write(new JobDropped("tank", null));
        Assert.Empty(device.History().Car.Jobs);
        device.Write(new Struck(drop.Id, null));
        Assert.Equal(before, device.History().Car);
    }

    [Fact]
    public void A_goal_whose_thing_is_taken_out_is_left_out_and_told()
    {
        var history = SmallCar.After(new JobEntered(_axle with
        { With = [], Goals = [Fact.Free("axle"), Fact.Open("tank-body"), Fact.Off("axle-unit")] }),
            new StructureRemoved(["part axle"]));
        Assert.Equal([Fact.Open("tank-body")], history.Car.Jobs.Single().Goals);
        Assert.Equal(2, history.Faults.Count(fault => fault.Place == "job axle"));
    }

    [Fact]
    public void What_is_not_there_is_neither_dropped_nor_done()
    {
        var history = SmallCar.After(new JobDropped("tank", null), new JobDone("tank", null), new JobEntered(Jobs.Tank),
            new JobDone("tank", null), new JobDone("tank", null));
        Assert.Equal(
            [Standing.NotApplied, Standing.NotApplied, Standing.InForce, Standing.InForce, Standing.NotApplied],
            history.Lines.Skip(SmallCar.Opening.Length).Select(line => line.Standing));
    }

    public static TheoryData<Job, string> Wrong => new()
    {
        { Jobs.Tank with { Id = "Tank" }, "identifier" },
        { Jobs.Tank with { Name = " " }, "no name" },
        { Jobs.Tank with { Work = new(-1) }, "work" },
        { Jobs.Tank with { Parts = new(-1) }, "parts" },
        { Jobs.Tank with { Worth = new(5, 4, 6, WorthUnit.Points, Origin.User) }, "worth" },
        { Jobs.Tank with { Goals = [Fact.Free("tnak")] }, "goal free(tnak)" },
        { Jobs.Tank with { Goals = [Fact.Off("body")] }, "fixed" },
        { Jobs.Tank with { Goals = [Fact.State("on-stands")] }, "stance" },
        { Jobs.Tank with { With = ["tank"] }, "itself" },
        { Jobs.Tank with { With = ["sills"] }, "no job" },
        { Jobs.Tank with { Waits = [new(WaitKind.Cure, "paint", 3, 2, Origin.User)] }, "wait" },
    };

    [Theory]
    [MemberData(nameof(Wrong))]
    public void A_faulty_job_is_refused_with_the_place(Job job, string found)
    {
        var faults = HappeningCheck.Of(SmallCar.After(), new JobEntered(job));
        var fault = Assert.Single(faults, fault => fault.Severity == Severity.Error);
        Assert.Contains(found, fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void A_sound_job_and_sound_means_are_taken()
    {
        Assert.Empty(HappeningCheck.Of(SmallCar.After(), new JobEntered(Jobs.Tank)));
        Assert.Empty(HappeningCheck.Of(SmallCar.After(), new MeansSet(new(new(0), new(60), new(2027, 5, 8), new(2)))));
        Assert.Equal(4, HappeningCheck.Of(SmallCar.After(), new MeansSet(new(new(-1), new(-1), new(1066, 5, 8), new(0)))).Count);
    }

    [Fact]
    public void There_is_one_day_to_meet_and_it_is_the_one_told_last()
    {
        var (may, june) = (new DateOnly(2027, 5, 8), new DateOnly(2027, 6, 5));
        HandoverSet handover = new(new(new(2027, 5, 8, 10, 30), "the buyer comes"));
        Assert.Equal(june, Folded(Day(june)).Due());
        Assert.Equal((may, may), Days(Day(june), handover));
        Assert.Equal((june, june), Days(handover, Day(june)));
        Assert.Equal("2027-06-05T10:30:00, the buyer comes",
            $"{Folded(handover, Day(june)).Calendar.Handover!.By:s}, {handover.Handover!.What}");
        Assert.Equal((may, may), Days(handover, Day(null)));
        Assert.Equal((null, null), Days(handover, Day(june), new HandoverSet(null)));
        Assert.Equal((null, null), Days(Day(june), Day(null)));
    }

    [Fact]
    public void Means_cannot_say_that_there_is_no_day_while_a_handover_is_set() =>
        Assert.Contains("refettle meet none",
            Assert.Single(HappeningCheck.Of(SmallCar.After(new HandoverSet(new(new(2027, 5, 8, 10, 30), "hand-over"))), Day(null))).Mend,
            StringComparison.Ordinal);

    private static MeansSet Day(DateOnly? day) => new(Means.NoLimit with { By = day });

    private static Car Folded(params Happening[] told) => SmallCar.After(told).Car;

    private static (DateOnly? Means, DateOnly? Due) Days(params Happening[] told) =>
        Folded(told) is var car ? (car.Means.By, car.Due()) : default;

    [Fact]
    public void A_want_without_worth_is_taken_with_a_note() =>
        Assert.Equal(Severity.Note,
            Assert.Single(HappeningCheck.Of(SmallCar.After(), new JobEntered(Jobs.Tank with { Worth = null }))).Severity);
}
