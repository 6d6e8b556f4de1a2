using Refettle.Access.Derivation;

namespace Refettle.Access;

/// <summary>Tells what still holds a part.</summary>
public static class Holds
{
    /// <param name="car">The car as it stands.</param>
    /// <param name="part">A part of it.</param>
    /// <exception cref="KeyNotFoundException">The car has no such part.</exception>
    public static HoldsAnswer Of(Car car, string part)
    {
        var standing = new CarStanding(car);
        var subject = standing.Parts[part];
        var catalogue = new WayCatalogue(standing, []);
        var closed = standing.JointsOf(part).Where(joint => !standing.IsTrue(Fact.Open(joint.Id)));
        return new()
        {
            Part = part,
            IsOff = standing.IsTrue(Fact.Off(part)),
            Joints = closed.Select(joint => HoldOf(joint, part, standing, catalogue)).OrderBy(hold => hold.Before.Count > 0)
                .ThenBy(hold => hold.Open?.Value ?? decimal.MaxValue).ThenBy(hold => hold.Joint, StringComparer.Ordinal).ToValueList(),
            InTheWay = subject.Out.Clear.Where(fact => !standing.IsTrue(fact)).ToValueList(),
            Prop = subject.Prop,
        };
    }

    private static Hold HoldOf(Joint joint, string part, CarStanding standing, WayCatalogue catalogue)
    {
        // A way that needs the part off first is no way to get it off, except as part of a sub-assembly.
        var ways = catalogue.Of(Fact.Open(joint.Id)).ToList();
        var best = ways.OrderBy(way => !way.IsAllowed).ThenBy(way => way.Needs.Contains(Fact.Off(part)))
            .ThenBy(way => way.Needs.Count > 0).ThenBy(way => way.Cost.Total.Value).FirstOrDefault();
        return new(
            joint.Id,
            Wording.JointName(joint, standing),
            joint.Kind,
            joint.Count,
            joint.Holds.Where(other => other != part).ToValueList(),
            best?.Way!.Tool,
            best?.Way!.Open,
            best?.Needs.ToValueList() ?? []);
    }
}
