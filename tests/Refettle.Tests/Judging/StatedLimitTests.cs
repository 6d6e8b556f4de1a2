using Refettle.Bench.Limits;
using Refettle.Judging;
using Refettle.Logbook;
using Refettle.Tests.Logbook;

namespace Refettle.Tests.Judging;

public sealed class StatedLimitTests
{
    private static readonly LimitSet Own = new(new("part wheel", "Run-out", null, 2, "mm", Origin.User, null));

    [Fact]
    public void The_sheets_limit_counts_until_the_owner_enters_one_and_again_when_that_is_struck()
    {
        var device = new TestDevice("bench");
        Entry[] before = [.. Opening.Select(device.Write), device.Write(Measured)];
        var own = device.Write(Own);
        Assert.Equal("run-out 1 mm or less (the maker's, manual 12)", Assert.Single(LimitWords.For(Fold(before), "part wheel")));
        Assert.Equal(Decision.Fail, Decided(Fold(before)));
        Assert.Equal("Run-out 2 mm or less (the owner's)", Assert.Single(LimitWords.For(Fold([.. before, own]), "part wheel")));
        Assert.Equal(Decision.Pass, Decided(Fold([.. before, own])));
        Assert.Equal(Decision.Fail, Decided(Fold([.. before, own, device.Write(new Struck(own.Id, null))])));
    }

    [Fact]
    public void Joints_and_spaces_have_theirs_and_what_leaves_takes_them_along()
    {
        var device = new TestDevice("bench");
        Entry[] all = [.. Opening.Select(device.Write)];
        Assert.Equal(["joint wheel-axle", "part wheel", "space floor"], Fold(all).Limits.Select(limit => limit.Of));
        Assert.Equal(["space floor"],
            Fold([.. all, device.Write(new StructureRemoved(["joint wheel-axle", "part wheel"]))]).Limits.Select(limit => limit.Of));
    }

    private static Found Measured => new(new() { Of = "part wheel", Scale = "rust", Reading = new("run-out", [1.5m], "mm", null, 0.01m) });

    private static Happening[] Opening => [new CarOpened("Heron", null, "EUR"), new StructureAdded("sheet", SmallCar.Structure with
    {
        Parts = SmallCar.Structure.Parts
            .Select(part => part.Id == "wheel" ? part with { Limits = [new("run-out", null, 1, "mm", Origin.Maker, "manual 12")] } : part)
            .ToValueList(),
        Joints = SmallCar.Structure.Joints
            .Select(joint => joint.Id == "wheel-axle" ? joint with { Limits = [new("stretch", null, 1, "mm", Origin.User, null)] } : joint)
            .ToValueList(),
        Spaces = SmallCar.Structure.Spaces.Select(space => space with { Limits = [new("wall", 0.8m, null, "mm", Origin.User, null)] })
            .ToValueList(),
    }, [])];

    private static Car Fold(Entry[] entries) => CarHistory.Of("heron", entries).Car;

    private static Decision? Decided(Car car) => Assert.Single(Condition.Of(car, "part wheel").Measured).Decision;
}
