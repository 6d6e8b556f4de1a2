using Refettle.Kits;

namespace Refettle.Sheets.Tests;

/// <summary>Nobody is sent under a car that stands on its wheels or hangs on a jack. Source: HSE leaflet INDG434 (vehicles are
/// supported on stands before anyone works under them).</summary>
public sealed class UnderTheCarTests
{
    private static readonly Structure _car = Shelved();

    private static readonly Raised _raised = new(_car);

    [Fact]
    public void Every_joint_undone_from_below_waits_for_stands()
    {
        var bold = from joint in _car.Joints
                   from way in joint.Ways
                   where way.Where == WorkPlace.OnCar && (way.Posture ?? PostureOf(joint)) == "under" && !_raised.Waits(way.Clear)
                   select $"{joint.Kit}: {joint.Id} by {way.Id}";
        Assert.Empty(bold);
    }

    [Fact]
    public void Every_part_lifted_out_below_waits_for_stands()
    {
        var bold = from part in _car.Parts
                   where !part.Fixed && part.Out.Off > Minutes.Zero && PostureIn(part.Zone) == "under"
                       && !_raised.Waits([Fact.Free(part.Id), .. part.Out.Clear])
                   select $"{part.Kit}: {part.Id}";
        Assert.Empty(bold);
    }

    [Fact]
    public void The_rule_tells_stands_from_wheels()
    {
        Assert.True(_raised.Waits([Fact.Off("exhaust-rear")]));
        Assert.False(_raised.Waits([Fact.Off("brake-servo")]));
    }

    private static string PostureOf(Joint joint) => PostureIn(_car.Parts.First(part => part.Id == joint.Holds[0]).Zone);

    private static string PostureIn(string zone) => _car.Zones.First(known => known.Id == zone).Posture;

    private static Structure Shelved()
    {
        var car = Checkout.Shelf.Start;
        foreach (var kit in Checkout.Shelf.Kits)
        {
            foreach (var spot in kit.Spots.Count == 0 ? [Spot.None] : kit.Spots)
            {
                var addition = KitAddition.Propose(car, kit, spot);
                if (addition.IsGood)
                    car = car.With(addition.Value.Entry.Added, addition.Value.Entry.Tied);
            }
        }

        return car;
    }
}
