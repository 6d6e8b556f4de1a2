using System.Text.RegularExpressions;
using Refettle.Access;
using Refettle.Kits;
using Refettle.Timeline.Network;

namespace Refettle.Sheets.Tests;

/// <summary>Whatever axles and corners a car is put together from: without a wheel, hub, spring, axle or arm it does
/// not roll, without a cap, a pipe or a trim it does. Which parts carry a car is common practice, no source; here it is told by the words
/// of their names, in the program by their roles.</summary>
public sealed partial class RollingKitTests
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_car_of_kits_rolls_on_what_carries_it(bool backwards)
    {
        var car = new Car { Id = "car", Name = "Car", Structure = Shelved(backwards) };
        Assert.Empty(Rolling.Against(new(car)));
        var carrying = car.Structure.Parts.Where(part => Carrying().IsMatch(part.Id)).ToList();
        var others = car.Structure.Parts.Where(part => Other().IsMatch(part.Id)).ToList();
        Assert.True(carrying.Count >= 20 && others.Count >= 20, $"{carrying.Count} carry, {others.Count} do not");
        Assert.All(carrying, part => Assert.NotEmpty(Rolling.Against(new(car with { Done = [Fact.Off(part.Id)] }))));
        Assert.All(others, part => Assert.Empty(Rolling.Against(new(car with { Done = [Fact.Off(part.Id)] }))));
        Assert.All(car.Structure.Joints.Where(joint => joint.Id.EndsWith("-wheel-nuts", StringComparison.Ordinal)),
            joint => Assert.NotEmpty(Rolling.Against(new(car with { Done = [Fact.Open(joint.Id)] }))));
    }

    [GeneratedRegex("(^|-)((?<!spare-|steering-)wheel|hub|knuckle|spring|lower-arm|upper-arm|ball-joint|trailing-arm|lateral-link|stub-axle|half-shaft|shackle|wheel-bearing|rear-axle|strut|track-rod)$")]
    private static partial Regex Carrying();

    [GeneratedRegex("(wheel-cap|wheel-sensor|-boot|brake-hose|brake-pipe|drop-link|bump-stop|-trim|bumper|headlamp|seat|carpet|exhaust-rear|fuel-tank|gear-lever)$")]
    private static partial Regex Other();

    private static Structure Shelved(bool backwards)
    {
        var car = Checkout.Shelf.Start;
        foreach (var kit in backwards ? Checkout.Shelf.Kits.Reverse() : Checkout.Shelf.Kits)
        {
            foreach (var spot in kit.Spots.Count == 0 ? [Spot.None] : kit.Spots)
                car = KitAddition.Propose(car, kit, spot) is { IsGood: true } addition
                    ? car.With(addition.Value.Entry.Added, addition.Value.Entry.Tied)
                    : car;
        }

        return car;
    }
}
