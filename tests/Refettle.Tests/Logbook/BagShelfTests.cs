using CsCheck;
using Refettle.Bags;
using Refettle.Logbook;

namespace Refettle.Tests.Logbook;

public sealed class BagShelfTests
{
    private static readonly BagPacked _washers = new("14", "four washers, thick ones outside", ["joint tank-body"], "blue box");

    [Fact]
    public void What_is_packed_later_is_added_and_the_place_is_the_last_one_said()
    {
        var bag = Assert.Single(SmallCar.After(_washers, new BagPacked("14", "two clips", ["part tank", "joint tank-body"], null),
            new BagMoved("14", "shelf")).Car.Bags);
        Assert.Equal(new Bag
        { Code = "14", Holds = [_washers.Holds!, "two clips"], For = ["joint tank-body", "part tank"], Place = "shelf" }, bag);
    }

    [Fact]
    public void An_emptied_bag_stays_known_and_begins_anew_when_packed_again()
    {
        Assert.True(Assert.Single(SmallCar.After(_washers, new BagEmptied("14")).Car.Bags).IsEmpty);
        var bag = Assert.Single(SmallCar.After(_washers, new BagEmptied("14"), new BagPacked("14", "hose clips", [], null)).Car.Bags);
        Assert.Equal(new Bag { Code = "14", Holds = ["hose clips"] }, bag);
    }

    [Fact]
    public void Two_devices_that_pack_one_bag_without_knowing_of_each_other_both_count()
    {
        var (bench, phone) = (new TestDevice("bench"), new TestDevice("phone"));
        foreach (var happening in SmallCar.Opening)
            bench.Write(happening);
        phone.Write(new BagPacked("14", "clips", [], null));
        bench.Write(_washers);
        var all = bench.Known.Concat(phone.Known).ToList();
        var bag = Assert.Single(CarHistory.Of(TestDevice.Car, all).Car.Bags);
        Assert.Equal(["clips", _washers.Holds!], bag.Holds.Order());
        Assert.Equal(bag, Assert.Single(CarHistory.Of(TestDevice.Car, all.AsEnumerable().Reverse()).Car.Bags));
    }

    [Fact]
    public void A_struck_entry_leaves_the_bag_as_it_was()
    {
        var device = new TestDevice("bench");
        foreach (var happening in SmallCar.Opening.Append(_washers))
            device.Write(happening);
        var before = device.History().Car;
        var emptied = device.Write(new BagEmptied("14"));
        Assert.NotEqual(before, device.History().Car);
        device.Write(new Struck(emptied.Id, null));
        Assert.Equal(before, device.History().Car);
    }

    [Fact]
    public void What_leaves_the_description_leaves_the_bag_too() =>
        Assert.Empty(Assert.Single(SmallCar.After(_washers, new StructureRemoved(["part tank"])).Car.Bags).For);

    [Fact]
    public void A_step_has_the_bags_of_its_joint_or_of_its_part_and_that_parts_joints()
    {
        var car = SmallCar.After(_washers, new BagPacked("2", "nuts", ["part wheel"], null),
            new BagPacked("3", "old", ["joint tank-body"], null), new BagEmptied("3")).Car;
        Assert.Equal(["14"], BagList.Of(car, Fact.Open("tank-body")).Select(bag => bag.Code));
        Assert.Equal(["14"], BagList.Of(car, Fact.Off("tank")).Select(bag => bag.Code));
        Assert.Equal(["2"], BagList.Of(car, Fact.Off("wheel")).Select(bag => bag.Code));
        Assert.Empty(BagList.Of(car, Fact.Off("axle-unit")));
    }

    [Fact]
    public void A_bag_is_left_over_when_all_it_belongs_to_is_together_again()
    {
        var off = SmallCar.After(_washers, new StepDone(Fact.Off("tank"), null, null));
        Assert.Empty(BagList.LeftOver(off.Car));
        var loose = SmallCar.After(_washers, new StepDone(Fact.Off("tank"), null, null), new StepReversed(Fact.Off("tank"), null));
        Assert.Empty(BagList.LeftOver(loose.Car));
        Happening[] together = [_washers, new StepDone(Fact.Off("tank"), null, null), new StepReversed(Fact.Off("tank"), null),
            new StepReversed(Fact.Open("tank-body"), null)];
        Assert.Equal("14", Assert.Single(BagList.LeftOver(SmallCar.After(together).Car)).Code);
        Assert.Empty(BagList.LeftOver(SmallCar.After([.. together, new BagEmptied("14")]).Car));
    }

    [Theory]
    [InlineData("", false)]
    [InlineData("14", true)]
    [InlineData("a-7", true)]
    [InlineData("A7", false)]
    [InlineData("-7", false)]
    [InlineData("123456789", false)]
    [InlineData("a.b", false)]
    public void A_code_is_short_and_plain(string code, bool valid) => Assert.Equal(valid, BagCode.IsValid(code));

    [Fact]
    public void What_is_wrong_with_a_bag_is_told_before_it_is_written()
    {
        var history = SmallCar.After(_washers);
        Assert.Contains("up to 8", Assert.Single(HappeningCheck.Of(history, _washers with { Code = "Nr 14" })).Mend,
            StringComparison.Ordinal);
        Assert.Contains("joint tank-bdy", Assert.Single(HappeningCheck.Of(history, _washers with { For = ["joint tank-bdy"] })).Found,
            StringComparison.Ordinal);
        Assert.Contains("nothing", Assert.Single(HappeningCheck.Of(history, new BagPacked("2", " ", [], null))).Found,
            StringComparison.Ordinal);
        Assert.Contains("no such bag", Assert.Single(HappeningCheck.Of(history, new BagMoved("15", "shelf"))).Found,
            StringComparison.Ordinal);
        Assert.Contains("no such bag", Assert.Single(HappeningCheck.Of(history, new BagEmptied("15"))).Found, StringComparison.Ordinal);
        Assert.Empty(HappeningCheck.Of(history, new BagPacked("14", "more", ["part wheel"], null)));
    }

    [Fact]
    public void The_next_code_is_a_number_that_was_never_on_a_bag() => Gen.Int[1, 400].Array[0, 30].Sample(numbers =>
    {
        var bags = numbers.Select(number => new Bag { Code = $"{number}", IsEmpty = number % 2 == 0 }).Append(new() { Code = "a7" })
            .ToList();
        var next = BagCode.Next(bags);
        return BagCode.IsValid(next) && bags.All(bag => bag.Code != next);
    });

    [Theory]
    [InlineData(" 014 ", "14")]
    [InlineData("A-7", "a-7")]
    [InlineData("000", "0")]
    public void A_code_is_read_as_it_is_said(string written, string code) => Assert.Equal(code, BagCode.Read(written));
}
