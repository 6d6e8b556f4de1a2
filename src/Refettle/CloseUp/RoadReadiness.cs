using Refettle.Access;
using Refettle.CloseUp.Refit;
using Refettle.Timeline.Network;

namespace Refettle.CloseUp;

/// <summary>Something that stands between the car and the road.</summary>
/// <param name="Thing">As <c>joint x</c>, <c>part x</c>, <c>state x</c>.</param>
public sealed record RoadBlock(string Thing, string Why);

/// <summary>What is left to do before the car may move on a road. An empty list is not a permit: brakes, fluids and
/// local law are judged by a person.</summary>
public static class RoadReadiness
{
    /// <summary>Parts off, joints open, states not undone, brakes not bled, joints snug only or not torqued at ride height, torques that
    /// contradict each other. Left out: what the owner leaves off on purpose.</summary>
    /// <param name="undecided">Torques that contradict each other.</param>
    /// <param name="leftOff">What stays off or open on purpose, as <c>part x</c>, <c>joint x</c>,
    /// <c>state x</c>; it becomes a disclosure.</param>
    /// <param name="awaited">What is not here to be fitted; it is said with what waits for it.</param>
    public static ValueList<RoadBlock> Of(
        Car car, ValueList<RideHeightLine> ledger, IEnumerable<string> leftOff, ValueList<TorqueConflict>? undecided = null,
        ValueList<Awaited>? awaited = null)
    {
        var meant = leftOff.ToHashSet();
        var units = car.Structure.SubAssemblies.Select(unit => Fact.Off(unit.Id)).ToHashSet();
        var found = car.Done.Where(fact => !units.Contains(fact)).Select(Block).OfType<RoadBlock>()
            .Where(block => !meant.Contains(block.Thing)).ToList();
        var undone = found.Select(block => block with
        { Why = string.Join("; ", (awaited ?? []).Where(one => one.Thing == block.Thing).Select(one => one.Says).Prepend(block.Why)) })
            .Concat((awaited ?? [])
                .Where(one => found.TrueForAll(block => block.Thing != one.Thing) && !(one.Thing is { } thing && meant.Contains(thing)))
                .Select(one => new RoadBlock(one.Thing ?? one.Name, $"not here: {one.Says}")));
        var unsettled = ledger.Where(line => line.IsToSettle)
            .Select(line => new RoadBlock($"joint {line.Joint.Id}", Why(line)));
        var unsound = car.Unsound.Select(part => new RoadBlock($"part {part}", "found too weak to carry the car"));
        var standing = new CarStanding(car);
        var unbled = car.Disturbed.Where(one => EndChecks.IsToBleed(one, standing) && !standing.IsTrue(one.Fact))
            .Select(one => new RoadBlock($"joint {one.Fact.Subject}", "closed again, and no bleeding of the brakes is marked since"));
        var torques = (undecided ?? []).Select(conflict => new RoadBlock($"joint {conflict.Joint}", conflict.Says));
        return [.. undone, .. unbled, .. unsettled, .. torques, .. unsound];
    }

    private static RoadBlock? Block(Fact fact) => fact.Kind switch
    {
        FactKind.Open => new($"joint {fact.Subject}", "open"),
        FactKind.Off => new($"part {fact.Subject}", "off the car"),
        FactKind.State => new($"state {fact.Subject}", "not undone yet"),
        _ => null,
    };

    private static string Why(RideHeightLine line) => line.Standing switch
    {
        RideHeightStanding.Snug when !line.Joint.AtRideHeight => "snug only: torque it",
        RideHeightStanding.Unknown when !line.Joint.AtRideHeight => "closed, but nobody recorded its torque",
        RideHeightStanding.Snug => "snug only: torque it at ride height",
        RideHeightStanding.TorquedHanging => "torqued with the wheels hanging: loosen it and torque it at ride height",
        _ => "closed, but nobody recorded its torque at ride height",
    };
}
