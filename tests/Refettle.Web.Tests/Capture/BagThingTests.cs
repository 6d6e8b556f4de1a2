using Refettle.Server.Tests;
using Refettle.Web.Capture;
using Refettle.Web.Words;

namespace Refettle.Web.Tests.Capture;

public sealed class BagThingTests
{
    private static readonly CarLookup _car = new(new() { Id = SmallCar.Id, Name = "Heron", Structure = SmallCar.Structure });

    [Theory]
    [InlineData("joint shackle-left", "Bolt: Rear left leaf spring – Body shell", "2 of them, M12x1.25, torque at ride height",
        "part/spring-left")]
    [InlineData("part rear-axle", "Rear axle", "", "part/rear-axle")]
    [InlineData("space above-axle", "Floor above the axle", "", "parts")]
    public void It_says_what_matters_when_it_goes_back(string thing, string name, string says, string page)
    {
        var shown = new BagThing(thing, _car);
        Assert.Equal((name, says, page), (shown.Name, shown.Says, shown.Page));
    }

    [Fact]
    public void A_torque_is_shown_with_where_it_is_from()
    {
        var joints = SmallCar.Structure.Joints
            .Select(joint => joint.Id == "shackle-left" ? joint with { Torque = new(90), Origin = Origin.CommonPractice } : joint)
            .ToValueList();
        var car = new CarLookup(_car.Car with { Structure = SmallCar.Structure with { Joints = joints } });
        Assert.Contains("90 N·m (common practice, no source)", new BagThing("joint shackle-left", car).Says, StringComparison.Ordinal);
    }
}
