using Refettle.CloseUp;
using Refettle.Logbook;

namespace Refettle.Tests.CloseUp;

public sealed class LastClosedTests
{
    private static readonly StepDone _off = new(Fact.Open("nut"), null, null);
    private static readonly StepReversed _back = new(Fact.Open("nut"), null);
    private static readonly JointTightened _tight = new("nut", Tightness.Torqued, new(45), null, null);

    private static readonly Structure _car = new()
    {
        Parts = [new() { Id = "hub", Name = "Hub" }, new() { Id = "wheel", Name = "Wheel" }],
        Joints = [new()
            { Id = "nut", Kind = JointKind.Nut, Holds = ["hub", "wheel"],
                Ways = [new() { Id = "spanner", Tool = "spanner", Open = new(5), Close = new(6) }] }],
    };

    [Fact]
    public void What_came_off_is_never_taken_back() => Assert.Empty(Struck(_off));

    [Fact]
    public void A_joint_is_taken_back_with_how_tight_it_was_made() => Assert.Equal([2, 1], Struck(_off, _back, _tight));

    [Fact]
    public void Without_a_torque_only_the_step_is_taken_back() => Assert.Equal([1], Struck(_off, _back, new Noted("grease", null)));

    [Fact]
    public void A_torque_read_later_leaves_the_step() =>
        Assert.Equal([4],
            Struck(_off, new StepDone(Fact.Off("wheel"), null, null), _back, new StepReversed(Fact.Off("wheel"), null), _tight));

    /// <summary>The places of the entries to strike among those written.</summary>
    private static IEnumerable<int> Struck(params Happening[] happenings)
    {
        var writer = new LogWriter("bench", TimeProvider.System, System.Security.Cryptography.RandomNumberGenerator.Create());
        var entries = writer.Next("heron", new(null, []), [.. happenings.Prepend(new StructureAdded("sheet", _car, []))]).ToList();
        return LastClosed.Of(CarHistory.Of("heron", entries)).Select(id => entries.FindIndex(entry => entry.Id == id) - 1);
    }
}
