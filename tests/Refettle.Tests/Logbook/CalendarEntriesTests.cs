using NodaTime;
using Refettle.Logbook;

namespace Refettle.Tests.Logbook;

public sealed class CalendarEntriesTests
{
    private static readonly Spell Evenings = new()
    {
        Id = "evenings",
        First = new(2027, 1, 5),
        From = new(18, 30),
        Until = new(21, 30),
        Repeats = new(Rhythm.Weekly, 1, [IsoDayOfWeek.Tuesday, IsoDayOfWeek.Thursday]),
    };

    private static readonly Facility Neighbour = new() { Id = "neighbour", Name = "Neighbour", Kind = FacilityKind.Helper };

    public static TheoryData<Happening, string> Wrong => new()
    {
        { new SpellAdded(Evenings with { Id = "Tue evening" }), "\"Tue evening\" is not an identifier" },
        { new SpellAdded(Evenings with { Whose = "neighbuor" }), "there is no such facility" },
        { new SpellAdded(Evenings with { Repeats = new(Rhythm.Weekly, 0, []) }), "it repeats every 0" },
        { new SpellAdded(Evenings with { Repeats = new(Rhythm.Daily, 1, [IsoDayOfWeek.Monday]) }), "its days of the week do not fit" },
        { new SpellAdded(Evenings with { Repeats = new(Rhythm.Weekly, 1, [], new(2026, 1, 1)) }),
            "its last day 2026-01-01 is before its first, 2027-01-05" },
        { new SpellRemoved("mornings"), "there is no such spell" },
        { new SpellMissed("evenigs", new(2027, 1, 5)), "there is no such spell" },
        { new TimeZoneChosen("Europe/Berln"), "\"Europe/Berln\" is not one" },
        { new HandoverSet(new(new(2027, 2, 20, 10, 0), " ")), "it has no name, or one of more than 200 characters" },
        { new HandoverSet(new(new(9999, 12, 31, 10, 0), "hand-over")), "the day 9999-12-31" },
        { new SpellAdded(Evenings with { First = new(202, 1, 5) }), "the day 0202-01-05" },
        { new SpellAdded(Evenings with { Repeats = new(Rhythm.Daily, 1, [], new(9999, 1, 1)) }), "the day 9999-01-01" },
        { new FacilityAdded(Neighbour with { Until = new(9999, 12, 31) }), "the day 9999-12-31" },
        { new TaskFixed("polish", new(9999, 12, 31, 10, 0)), "the day 9999-12-31" },
        { new TaskMarked(new("polish", TaskProgress.Done, new(9999, 12, 31, 10, 0))), "the day 9999-12-31" },
        { new TaskForbidden("polish", new(new(2027, 1, 2), new(9999, 12, 31))), "the day 9999-12-31" },
        { new FacilityAdded(Neighbour with { Count = 0 }), "there are 0" },
        { new FacilityAdded(Neighbour with { From = new(2027, 2, 1), Until = new(2027, 1, 1) }), "its last day is before its first" },
        { new FacilityRemoved("lift"), "there is no such facility" },
        { new ClimateExpected([new(13, 5, 80, Origin.User)]), "there is no month 13" },
        { new ClimateRead(new(new(2027, 1, 1), 5, 0)), "0 % relative humidity" },
        { new TaskAdded(new() { Id = "polish", Name = "Polish", Takes = new(-5) }), "-5 min" },
        { new TaskAdded(new() { Id = "polish", Name = "Polish", Takes = new(5), After = ["polish"] }),
            "it is to come before or after itself" },
        { new TaskRemoved("polish"), "there is no such task" },
        { new TaskSplit("polish", [new(10)]), "it is split into 1" },
        { new TaskEquipped("job.floor", ["bay"]), "there is no such facility" },
        { new TaskForbidden("polish", new(new(2027, 1, 2), new(2027, 1, 1))), "the last day is before the first" },
    };

    [Fact]
    public void A_car_stands_in_one_place()
    {
        var told = new TaskAdded(new() { Id = "polish", Name = "Polish", Takes = new(5), Uses = ["yard", "corner"] });
        var there = SmallCar.After(new FacilityAdded(new() { Id = "yard", Name = "Yard", Kind = FacilityKind.Place }),
            new FacilityAdded(new() { Id = "corner", Name = "Corner", Kind = FacilityKind.Place }));
        Assert.Equal("the car is to stand at yard and corner", Assert.Single(HappeningCheck.Of(there, told)).Found);
        Assert.Empty(HappeningCheck.Of(there, told with { Task = told.Task with { Uses = ["yard"] } }));
        Assert.Equal("the car is to stand at yard and corner",
            Assert.Single(HappeningCheck.Of(there, new TaskEquipped("job.floor", ["yard", "corner"]))).Found);
        Assert.Empty(HappeningCheck.Of(there, new TaskEquipped("job.floor", ["yard"])));
        Assert.Equal(["yard"], Assert.Single(SmallCar.After(new TaskEquipped("job.floor", ["yard"])).Car.Calendar.Terms).Uses);
        Assert.Empty(SmallCar.After(new TaskEquipped("job.floor", ["yard"]), new TaskEquipped("job.floor", [])).Car.Calendar.Terms);
    }

    [Theory]
    [MemberData(nameof(Wrong))]
    public void A_mistake_is_named(Happening happening, string found) =>
        Assert.Contains(found,
            HappeningCheck.Of(SmallCar.After(new SpellAdded(Evenings), new FacilityAdded(Neighbour)), happening)
                .Select(fault => fault.Found));

    [Fact]
    public void Spells_are_added_replaced_missed_and_taken_out()
    {
        var missed = SmallCar.After(new SpellAdded(Evenings), new SpellMissed("evenings", new(2027, 1, 7)),
            new SpellMissed("evenings", new(2027, 1, 7)));
        Assert.Equal([new LocalDate(2027, 1, 7)], Assert.Single(missed.Car.Calendar.Spells).Except);
        Assert.Equal(Evenings with { From = new(19, 0) },
            Assert.Single(
                SmallCar.After(new SpellAdded(Evenings), new SpellAdded(Evenings with { From = new(19, 0) })).Car.Calendar.Spells));
        Assert.Empty(SmallCar.After(new SpellAdded(Evenings), new SpellRemoved("evenings")).Car.Calendar.Spells);
        var lines = SmallCar.After(new SpellRemoved("evenings")).Lines;
        Assert.Equal(Standing.NotApplied, lines[lines.Count - 1].Standing);
    }

    /// <summary>A log that comes from elsewhere was not asked before it was written.</summary>
    public static TheoryData<Happening> Impossible => new(
        new HandoverSet(new(new(9999, 12, 31, 10, 0), "hand-over")),
        new SpellAdded(Evenings with { Id = "more", First = new(9999, 12, 31) }),
        new SpellMissed("evenings", new(9999, 12, 31)), new FacilityAdded(Neighbour with { Until = new(9999, 12, 31) }),
        new ClimateRead(new(new(9999, 12, 31), 5, 80)), new TaskFixed("polish", new(9999, 12, 31, 10, 0)),
        new TaskForbidden("polish", new(new(2027, 1, 2), new(9999, 12, 31))),
        new TaskMarked(new("polish", TaskProgress.Done, new(9999, 12, 31, 10, 0))),
        new TimelineKept([new("polish", new(2027, 1, 2, 10, 0), new(9999, 12, 31, 10, 0))]),
        new MeansSet(new(null, null, new(9999, 12, 31), null)),
        new SoakBegun("tank-body", "oil", new(9999, 12, 31, 10, 0, 0, TimeSpan.Zero)),
        new MoneySpent(new(new(5), "oil", default, null, null, null, new(9999, 12, 31))));

    [Theory]
    [MemberData(nameof(Impossible))]
    public void A_day_that_cannot_be_meant_stays_in_the_log_and_is_not_applied(Happening happening)
    {
        var history = SmallCar.After(new SpellAdded(Evenings), happening);
        var line = history.Lines[history.Lines.Count - 1];
        Assert.Equal(Standing.NotApplied, line.Standing);
        Assert.Contains("the day 9999-12-31", line.Reason!, StringComparison.Ordinal);
        Assert.Equal(SmallCar.After(new SpellAdded(Evenings)).Car, history.Car);
    }

    [Fact]
    public void A_helper_takes_his_spells_with_him() => Assert.Empty(
        SmallCar.After(new FacilityAdded(Neighbour), new SpellAdded(Evenings with { Whose = "neighbour" }),
            new FacilityRemoved("neighbour")).Car.Calendar.Spells);

    [Fact]
    public void A_struck_entry_is_as_if_never_written()
    {
        var device = new TestDevice("bench");
        foreach (var happening in SmallCar.Opening)
            device.Write(happening);
        var before = device.History().Car;
        var spell = device.Write(new SpellAdded(Evenings));
        var fixedStart = device.Write(new TaskFixed("polish", new(2027, 1, 9, 10, 0)));
        Assert.NotEqual(before, device.History().Car);
        device.Write(new Struck(spell.Id, null));
        device.Write(new Struck(fixedStart.Id, null));
        Assert.Equal(before, device.History().Car);
    }

    [Fact]
    public void Terms_of_one_task_come_together_and_go_again()
    {
        var terms = Assert.Single(SmallCar.After(
            new TaskTimed("polish", new(50)), new TaskForbidden("polish", new(new(2027, 1, 4), new(2027, 1, 5))),
            new TaskForbidden("polish", new(new(2027, 2, 1), new(2027, 2, 1)))).Car.Calendar.Terms);
        Assert.Equal(new Minutes(50), terms.Takes);
        Assert.Equal(2, terms.Not.Count);
        Assert.Empty(SmallCar.After(new TaskTimed("polish", new(50)), new TaskTimed("polish", null)).Car.Calendar.Terms);
        Assert.Empty(SmallCar.After(new TaskMarked(new("polish", TaskProgress.Done, new(2027, 1, 9, 10, 0))),
            new TaskMarked(new("polish", TaskProgress.Ahead, new(2027, 1, 9, 10, 5)))).Car.Calendar.Marks);
    }

    [Fact]
    public void A_spell_is_told_as_one_would_say_it() =>
        Assert.Equal("spell evenings: Tue, Thu 18:30–21:30 from Tue 2027-01-05", CalendarWords.Of(new SpellAdded(Evenings)));

    [Fact]
    public void Every_month_of_an_entry_is_kept() =>
        Assert.Equal([1, 2, 3],
            SmallCar.After(new ClimateExpected([new(1, 4, 80, Origin.User), new(2, 5, 80, Origin.User),
                new(3, 6, 80, Origin.User)])).Car.Calendar.Climate.Select(month => month.Month));
}
