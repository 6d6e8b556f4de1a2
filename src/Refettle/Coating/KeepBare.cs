namespace Refettle.Coating;

/// <summary>A place on a part that stays bare.</summary>
/// <param name="Joint">The joint it follows from; null when the owner says so, or when it follows from what the part is.</param>
/// <param name="Origin">The owner's word, or common practice without a source.</param>
public sealed record BareSpot(string Part, string Spot, string Why, string? Joint, Origin Origin);

/// <summary>What of a part is masked: from its joints, from what it is, and from its owner's entries.</summary>
/// <remarks>Common practice, no source, but that film under bolt heads costs clamp load. Where the maker says what to
/// coat and what not, that counts.</remarks>
public static class KeepBare
{
    private static readonly string[] _earthWords = ["earth", "ground strap", "bonding strap"];

    private static readonly string[] _brakeRoles = ["brake-disc", "brake-drum"];

    public static ValueList<BareSpot> Of(Car car, string part)
    {
        var structure = car.Structure;
        var itself = structure.Parts.FirstOrDefault(one => one.Id == part);
        var joints = structure.Joints.Where(joint => joint.Holds.Contains(part)).OrderBy(joint => joint.Id, StringComparer.Ordinal);
        return (itself is null ? [] : OfPart(itself))
            .Concat(joints.SelectMany(joint => OfJoint(structure, part, joint)))
            .Concat(car.Coating.Bare.Where(spot => spot.Part == part)
                .Select(spot => new BareSpot(part, spot.Spot, spot.Why ?? "", null, Origin.User)))
            .Distinct().ToValueList();
    }

    private static IEnumerable<BareSpot> OfPart(Part part)
    {
        if (part.Roles.Any(_brakeRoles.Contains))
            yield return new(part.Id, "the faces that the pads or shoes rub on", "paint on them is no brake", null, Origin.CommonPractice);
        if (part.Roles.Contains("hub"))
            yield return new(part.Id, "the face and spigot that disc, drum or wheel sit on",
                "paint creeps under the wheel and the clamp is lost", null, Origin.CommonPractice);
    }

    private static IEnumerable<BareSpot> OfJoint(Structure structure, string part, Joint joint)
    {
        var others = string.Join(", ", joint.Holds.Where(other => other != part).Select(structure.PartName));
        var name = joint.Name ?? $"the joint to {others}";
        BareSpot Spot(string spot, string why) => new(part, $"{name}: {spot}", why, joint.Id, Origin.CommonPractice);
        if (IsEarth(structure, joint))
            yield return Spot("contact face, bright metal", "an earth through paint is none; coat over it once it is bolted up");
        if (Threaded(joint))
        {
            yield return Spot(
                $"threads{(joint.Thread is { } thread ? $" {thread}" : "")}{(joint.Count > 1 ? $", {joint.Count} of them" : "")}",
                "paint in a thread falsifies its torque");
            yield return Spot("faces under heads, nuts and washers, and where the parts meet",
                "a soft film creeps and the clamp load goes with it");
        }

        if (Fit(joint.Kind, others) is var (fit, because))
            yield return Spot(fit, because);
    }

    private static bool Threaded(Joint joint) =>
        joint.Thread is not null || joint.Kind is JointKind.Bolt or JointKind.Nut or JointKind.Stud or JointKind.Screw;

    private static bool IsEarth(Structure structure, Joint joint) =>
        joint.Holds.Select(part => structure.Parts.FirstOrDefault(one => one.Id == part)?.Name ?? "").Append(joint.Name ?? "")
        .Any(words => _earthWords.Any(word => words.Contains(word, StringComparison.OrdinalIgnoreCase)));

    private static (string Spot, string Why)? Fit(JointKind kind, string others) => kind switch
    {
        JointKind.PressFit => ($"bore or seat of the press fit with {others}", "film alters the fit and is scraped off going in"),
        JointKind.Taper => ("taper, both faces", "a taper holds by metal on metal"),
        JointKind.Spline => ("splines", "film alters the fit"),
        JointKind.Pin => ("pin and its bore", "film binds what has to turn"),
        JointKind.Seal or JointKind.Pipe or JointKind.Hose => ($"sealing face to {others}", "a seal seats on clean metal"),
        JointKind.Connector => ("contacts", "paint does not conduct"),
        JointKind.Weld => ("a hand's breadth beside the seam, until it is welded", "burning paint poisons, and the weld takes up its gas"),
        JointKind.Bond => ($"glued face to {others}", "the adhesive's sheet says on what it holds"),
        _ => null,
    };
}
