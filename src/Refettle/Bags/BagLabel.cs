using Refettle.Logbook;

namespace Refettle.Bags;

/// <summary>What is printed on the label of a bag.</summary>
/// <param name="Code">As it is shown, large.</param>
/// <param name="Scan">What its QR code holds.</param>
/// <param name="Lines">Most important first: where there is little room the last ones fall away.</param>
public sealed record BagLabel(string Code, string Scan, ValueList<string> Lines)
{
    /// <param name="address">The garage's own, so that a phone's camera opens the bag's page:
    /// <c>http://192.168.1.20:5188</c>; null for the code alone.</param>
    public static BagLabel Of(Car car, Bag bag, string? address)
    {
        var things = bag.For.Select(text => Thing.TryParse(text, out var thing) ? thing : (Thing?)null).OfType<Thing>().ToList();
        var joints = things.Where(thing => thing.Kind == ThingKind.Joint)
            .Select(thing => car.Structure.Joints.FirstOrDefault(joint => joint.Id == thing.Id)).OfType<Joint>().ToList();
        var lines = bag.Holds.Reverse().Concat(things.Where(thing => thing.Kind == ThingKind.Part).Select(thing => PartLine(car, thing.Id)))
            .Concat(joints.SelectMany(joint => JointLines(car, joint)))
            .Append(bag.Place is null ? "" : $"In: {bag.Place}");
        return new(BagCode.Shown(bag.Code),
            address is null ? BagCode.Shown(bag.Code) : $"{address.TrimEnd('/')}/car/{car.Id}/bag/{bag.Code}",
            lines.Where(line => line.Length > 0).Distinct().ToValueList());
    }

    private static string PartLine(Car car, string id) =>
        car.Structure.Parts.FirstOrDefault(part => part.Id == id) is { } part ? Sided(part) : id;

    /// <summary>The step, then its torque note.</summary>
    private static IEnumerable<string> JointLines(Car car, Joint joint)
    {
        var name = joint.Name ?? string.Join(" to ", joint.Holds.Select(part => PartLine(car, part)));
        yield return $"{(joint.Count > 1 ? $"{joint.Count} × " : "")}{name}{(joint.Thread is null ? "" : $", {joint.Thread}")}";
        string?[] notes =
        [
            joint.Torque is { } torque ? $"{torque}{(joint.Origin == Origin.Maker ? "" : " (not the maker's figure)")}" : null,
            joint.AtRideHeight ? "snug now, torque at ride height" : null,
            joint.SingleUse ? "new ones each time" : null,
        ];
        yield return string.Join("; ", notes.OfType<string>());
    }

    private static string Sided(Part part) =>
        part.Side == Side.None || part.Name.Contains(part.Side.ToString(), StringComparison.OrdinalIgnoreCase)
        ? part.Name
        : $"{part.Name}, {part.Side.ToString().ToLowerInvariant()}";
}
