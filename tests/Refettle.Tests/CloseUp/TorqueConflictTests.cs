using Refettle.CloseUp;
using Refettle.Logbook;
using Refettle.Tests.Logbook;

namespace Refettle.Tests.CloseUp;

/// <summary>Concurrent entries by the happened-before relation (Lamport, Time, clocks and the ordering of events, CACM 21
/// (1978)): neither has seen the other.</summary>
public sealed class TorqueConflictTests
{
    private readonly TestDevice _bench = new("bench");

    private readonly TestDevice _phone = new("phone", 7);

    public TorqueConflictTests()
    {
        foreach (var happening
            in new Happening[] { new CarOpened("Heron", 1988, "EUR"), new StructureAdded("sheet", SmallCar.Structure, []) })
            _bench.Write(happening);
        _phone.Learn(_bench.Known);
    }

    [Fact]
    public void Two_torques_that_never_met_are_both_kept()
    {
        Meet(45, 54);
        Assert.Equal([new(45), new(54)], Assert.Single(Conflicts()).Told.Select(told => told.Torque).OrderBy(torque => torque.Value));
        Assert.Contains(RoadReadiness.Of(_bench.History().Car, [], [], Conflicts()), block => block.Thing == "joint tank-body");
    }

    [Fact]
    public void The_same_torque_twice_is_none()
    {
        Meet(45, 45);
        Assert.Empty(Conflicts());
    }

    [Fact]
    public void What_knew_of_the_other_decides()
    {
        Torque(_bench, 45);
        _phone.Learn(_bench.Known);
        Torque(_phone, 54);
        _bench.Learn(_phone.Known);
        Assert.Empty(Conflicts());
    }

    [Fact]
    public void A_later_entry_a_strike_or_a_new_opening_decides()
    {
        var wrong = Meet(45, 54);
        var seen = _bench.Known.ToList();
        Assert.Empty(After(seen, new JointTightened("tank-body", Tightness.Torqued, new(50), null, null)));
        Assert.Empty(After(seen, new Struck(wrong.Id, "the old wrench")));
        Assert.Empty(After(seen, new StepDone(Fact.Open("tank-body"), null, null)));
        Assert.Single(After(seen, new Noted("nothing to do with it", null)));
    }

    [Fact]
    public void Saying_which_holds_strikes_the_other_and_leaves_it_in_the_log()
    {
        Meet(45, 54);
        var conflict = Assert.Single(Conflicts());
        var struck = Assert.IsType<Struck>(Assert.Single(conflict.Decided(new(54))));
        Assert.Equal(new(45), conflict.Told.Single(told => told.Entry == struck.Target).Torque);
        Assert.Empty(After(_bench.Known.ToList(), struck));
        Assert.All(conflict.Told,
            told => Assert.Contains($"somebody at {told.Device}", told.Says(DeviceNames.None), StringComparison.Ordinal));
        var called = new DeviceNames([new(conflict.Told[0].Device, "pit phone")]);
        Assert.Contains("somebody at pit phone", conflict.Told[0].Says(called), StringComparison.Ordinal);
    }

    private static ValueList<TorqueConflict> After(IEnumerable<Entry> known, Happening happening)
    {
        var third = new TestDevice("desk", 9);
        third.Learn(known);
        third.Write(happening);
        return TorqueConflicts.Of(third.History());
    }

    private Entry Meet(decimal bench, decimal phone)
    {
        var first = Torque(_bench, bench);
        Torque(_phone, phone);
        _bench.Learn(_phone.Known);
        return first;
    }

    private static Entry Torque(TestDevice device, decimal torque) =>
        device.Write(new JointTightened("tank-body", Tightness.Torqued, new(torque), null, null));

    private ValueList<TorqueConflict> Conflicts() => TorqueConflicts.Of(_bench.History());
}
