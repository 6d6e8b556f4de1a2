using Refettle.Access;
using Refettle.Logbook;
using Refettle.Stock;
using Refettle.Stuck;
using Refettle.Tests.Logbook;

namespace Refettle.Tests.Stock;

public sealed class InHandTests
{
    private static readonly string[] Words = ["bolt", "bush", "new fastener", "the lesser part"];

    [Fact]
    public void Nothing_on_the_shelf_is_nothing_in_hand() => Assert.Empty(Of(Numbered(), Shelf.Empty));

    [Fact]
    public void The_joints_own_fastener_is_in_hand_when_all_of_it_is_there()
    {
        var car = Numbered();
        Assert.Equal(["bolt", "new fastener"], Of(car, With(new Batch("B-10"), 2)));
        Assert.Empty(Of(car, With(new Batch("B-10"), 1)));
        Assert.Empty(Of(car, With(new Batch("B-10", UseBy: Garage.Day(-1)), 2)));
    }

    [Fact]
    public void A_part_of_the_joint_is_in_hand_under_a_number_that_is_the_same_part_but_not_as_a_substitute()
    {
        var car = Numbered();
        Shelf Known(string onShelf) =>
            With(new Batch(onShelf), 1) with
            { Numbers = [new() { Id = "D-1", SupersededBy = "D-2", Substitutes = [new("X", "shorter")] }, new() { Id = "D-2" }] };
        Assert.Equal(["bush"], Of(car, Known("D-2")));
        Assert.Empty(Of(car, Known("X")));
    }

    [Fact]
    public void What_is_kept_for_another_place_is_not_in_hand_here()
    {
        var shelf = With(new Batch("B-10"), 2);
        Assert.Empty(Of(Numbered(), shelf with { Claims = [new("saloon", "part damper", "B-10", 1, [])] }));
        Assert.Equal(2, Of(Numbered(), shelf with { Claims = [new("heron", "joint damper-axle", "B-10", 2, [])] }).Count);
    }

    [Fact]
    public void The_gate_opens_by_what_the_shelf_has()
    {
        var car = Numbered();
        var joint = car.Structure.Joints.Single(one => one.Id == "damper-axle");
        var rung = new Rung { Id = "cut", Says = "Cut the bolt", Odds = [1, 1, 1, 1, 1], Destroys = ["bolt"] };
        ValueList<ClosedBy> Gate(Shelf shelf) =>
            Refettle.Stuck.Gate.Of(new CarStanding(car), joint, rung,
                AtHand.Nothing with { InHand = InHand.Of(car, shelf, joint, rung.Destroys, Garage.Day(0)) });
        Assert.Single(Gate(Shelf.Empty));
        Assert.Empty(Gate(With(new Batch("B-10"), 2)));
    }

    private static ValueList<string> Of(Car car, Shelf shelf) =>
        InHand.Of(car, shelf, car.Structure.Joints.Single(joint => joint.Id == "damper-axle"), Words, Garage.Day(0));

    private static Shelf With(Batch batch, int count) => new() { Holdings = [new(batch, count)] };

    private static Car Numbered()
    {
        var car = SmallCar.After(new NumberAssigned("joint damper-axle", "B-10", 2), new NumberAssigned("part damper", "D-1", 1)).Car;
        return car with
        {
            Structure = car.Structure with
            {
                Joints = car.Structure.Joints.Select(joint => joint.Id == "damper-axle" ? joint with { Kind = JointKind.Bolt } : joint)
                    .ToValueList(),
                Parts = car.Structure.Parts.Select(part => part.Id == "damper" ? part with { Name = "Damper bush" } : part).ToValueList(),
            },
        };
    }
}
