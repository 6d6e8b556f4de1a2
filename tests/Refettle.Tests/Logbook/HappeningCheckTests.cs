using Refettle.Logbook;

namespace Refettle.Tests.Logbook;

public sealed class HappeningCheckTests
{
    public static TheoryData<Happening, string> Wrong => new()
    {
        { new CarOpened(" ", 1988, "EUR"), "it has no name" },
        { new CarOpened("Heron", 1788, "EUR"), "its year is 1788" },
        { new CarOpened("Heron", 1988, "euro"), "its currency is \"euro\"" },
        { new StepDone(Fact.Off("tnak"), null, null), "the car has no part or sub-assembly tnak" },
        { new StepDone(Fact.Off("body"), null, null), "part body is what the rest hangs on and never comes off" },
        { new StepDone(Fact.Open("tank-body"), "drill", null), "it has no way drill" },
        { new StepDone(Fact.Off("tank"), null, new(-1)), "-1 min" },
        { new StepReversed(Fact.Free("tank"), null),
            "free(tank) follows from other facts; say which joint was closed or which part was put back" },
        { new StanceTaken("flying"), "the car has no stance flying" },
        { new StanceTaken("battery-off"), "the car has no stance battery-off" },
        { new SoundnessJudged("roof", false), "the car has no part roof" },
        { new StructureRemoved(["tank"]), "\"tank\" is not the name of a thing" },
        { new StructureRemoved(["joint tank"]), "the car has no joint tank" },
        { new SettingsChosen(new() { PerHour = new(0) }), "an hour of work is worth 0.00" },
        { new SettingsChosen(new() { ToolChange = new(-1) }), "it is -1 min" },
        { new Ordered("Harbour Rubber", [new("SEAL", 1)], new(2026, 3, 1), new(9026, 3, 9), null, null), "the day 9026-03-09" },
        { new OrderPromised(Guid.Empty, new(9026, 3, 9)), "the day 9026-03-09" },
        { new Arrived(Guid.Empty, [new("SEAL", new("SEAL"), 1)], new(9999, 12, 30)), "the day 9999-12-30" },
        { new Arrived(Guid.Empty, [new("SEAL", new("SEAL", Made: new(9999, 12, 30)), 1)], new(2026, 3, 1)), "the day 9999-12-30" },
        { new SentOut("Plater", "zinc", [new("hooks", 3, null, [])], new(2026, 3, 1), new(9026, 3, 9), null), "the day 9026-03-09" },
        { new Noted("", null), "it is empty" },
        { new Noted("wet", "part roof"), "the car has no part roof" },
        { new Struck(Guid.Empty, null), "this car's log has no entry 00000000-0000-0000-0000-000000000000" },
    };

    [Theory]
    [MemberData(nameof(Wrong))]
    public void A_mistake_is_named(Happening happening, string found) =>
        Assert.Contains(found,
            HappeningCheck.Of(SmallCar.After(), happening).Where(fault => fault.Severity == Severity.Error).Select(fault => fault.Found));

    [Fact]
    public void A_near_name_is_offered() =>
        Assert.Contains("tank", HappeningCheck.Of(SmallCar.After(), new StepDone(Fact.Off("tnak"), null, null))[0].Mend,
            StringComparison.Ordinal);

    /// <summary>The name was right: what has to be done first is the help.</summary>
    [Fact]
    public void A_joint_of_what_is_off_is_not_asked_for_by_its_own_name() =>
        Assert.Equal("Fit first what is off, and say so: refettle back 'off(PART)'.",
            HappeningCheck.Of(SmallCar.After(new StepDone(Fact.Off("wheel"), null, null)),
                new StepReversed(Fact.Open("wheel-axle"), null))[0].Mend);

    [Fact]
    public void What_fits_has_no_fault() => Assert.All(
        [
            new StepDone(Fact.Off("tank"), "alone", new(4)), new StepDone(Fact.Open("tank-body"), "spanner", null),
            new StepDone(Fact.State("on-stands"), "do", null),
            new StanceTaken("on-stands"), new SoundnessJudged("body", false), new StructureRemoved(["part tank", "zone rear"]),
            new Noted("wet", "space floor"),
            new StructureAdded("edit", new() { Parts = [new() { Id = "roof", Name = "Roof" }] }, []),
        ],
        (Happening happening) => Assert.Empty(HappeningCheck.Of(SmallCar.After(), happening)));

    [Fact]
    public void Nobody_is_led_under_a_car_that_weak_parts_carry()
    {
        var history = SmallCar.After(new SoundnessJudged("body", false));
        foreach (Happening happening in new Happening[] { new StanceTaken("on-stands"), new StepDone(Fact.State("on-stands"), null, null) })
            Assert.Contains(HappeningCheck.Of(history, happening),
                fault => fault is { Severity: Severity.Error } && fault.Found.Contains("unsound", StringComparison.Ordinal));
        Assert.Empty(HappeningCheck.Of(SmallCar.After(), new StanceTaken("on-stands")));
    }

    [Fact]
    public void Marking_twice_is_a_note_only() =>
        Assert.Equal(Severity.Note,
            Assert.Single(HappeningCheck.Of(SmallCar.After(new StepDone(Fact.Off("tank"), null, null)),
                new StepDone(Fact.Off("tank"), null, null))).Severity);

    [Fact]
    public void A_struck_entry_is_not_struck_again_and_a_car_stays_opened()
    {
        var device = new TestDevice("bench");
        var opened = device.Write(SmallCar.Opening[0]);
        var note = device.Write(new Noted("x", null));
        Assert.Empty(HappeningCheck.Of(device.History(), new Struck(note.Id, null)));
        device.Write(new Struck(note.Id, null));
        Assert.Single(HappeningCheck.Of(device.History(), new Struck(note.Id, null)));
        Assert.Single(HappeningCheck.Of(device.History(), new Struck(opened.Id, null)));
    }

    [Fact]
    public void An_addition_answers_for_its_own_faults_only()
    {
        var bad = new Structure { Joints = [new() { Id = "roof-body", Holds = ["roof", "body"], Ways = [] }] };
        var faults = HappeningCheck.Of(SmallCar.After(), new StructureAdded("edit", bad, ["exhaust/shield"]));
        Assert.All(faults, fault => Assert.True(fault.Place is "joint roof-body" or "loose end exhaust/shield", fault.ToString()));
        Assert.True(faults.Count >= 3);
        var twice = new Structure { Parts = [new() { Id = "roof", Name = "Roof" }, new() { Id = "roof", Name = "Roof again" }] };
        Assert.Contains(HappeningCheck.Of(SmallCar.After(), new StructureAdded("edit", twice, [])),
            fault => fault.Found == "it is described more than once");
    }
}
