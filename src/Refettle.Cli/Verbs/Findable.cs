using Refettle.Logbook;

namespace Refettle.Cli.Verbs;

/// <summary>A part, joint or space by its identifier alone.</summary>
internal static class Findable
{
    /// <summary><c>part x</c>, <c>joint x</c> or <c>space x</c>; what is asked may say the kind as well.</summary>
    public static Result<string> Of(Structure structure, string asked)
    {
        if (Thing.TryParse(asked, out var thing))
            asked = thing.Id;
        var named = structure.Parts.Select(part => (part.Id, $"part {part.Id}"))
            .Concat(structure.Joints.Select(joint => (joint.Id, $"joint {joint.Id}")))
            .Concat(structure.Spaces.Select(space => (space.Id, $"space {space.Id}"))).Where(pair => pair.Id == asked)
            .Select(pair => pair.Item2).ToList();
        named = thing.Id is null ? named : named.Where(one => one == thing.ToString()).ToList();
        return named.Count > 0
            ? Result<string>.Good(named[0])
            : Result<string>.Bad(new Fault(asked, "the car has no part, joint or space of this name",
                NearNames.Ask(asked, structure.Parts.Select(part => part.Id).Concat(structure.Joints.Select(joint => joint.Id)),
                    "refettle show parts lists them.")));
    }

    /// <summary>The scales for <c>part x</c>, <c>joint x</c> or <c>space x</c>.</summary>
    public static ValueList<ConditionScale> Scales(Structure structure, string thing) =>
        thing.StartsWith("part ", StringComparison.Ordinal) ? ConditionScales.For(structure.Parts.First(part => $"part {part.Id}" == thing))
        : thing.StartsWith("joint ", StringComparison.Ordinal) ? ConditionScales.ForJoint
        : ConditionScales.All
            .Where(scale => scale.Id is ConditionScales.Rust or ConditionScales.Perforation or ConditionScales.Thinning
                or ConditionScales.Place).ToValueList();
}
