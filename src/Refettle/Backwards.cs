namespace Refettle;

/// <summary>A structure as the refit meets it: where a thing has a refit way, that stands in place of its ways open or out.</summary>
public static class Backwards
{
    /// <summary>The same structure where nothing has a refit way.</summary>
    public static Structure Of(Structure structure)
    {
        if (!Has(structure))
            return structure;
        var stances = structure.States.Where(state => state.IsStance).Select(state => Fact.State(state.Id)).ToHashSet();
        return structure with
        {
            Joints = structure.Joints
                .Select(joint => joint.Refit is { } back
                    ? joint with { Ways = joint.Ways.Select(way => Of(way, back, stances)).ToValueList() }
                    : joint).ToValueList(),
            Parts = structure.Parts.Select(part => part.Out.Refit is { } back ? part with { Out = Of(part.Out, back, stances) } : part)
                .ToValueList(),
            SubAssemblies = structure.SubAssemblies
                .Select(unit => unit.Out.Refit is { } back ? unit with { Out = Of(unit.Out, back, stances) } : unit).ToValueList(),
        };
    }

    private static bool Has(Structure structure) => structure.Joints.Any(joint => joint.Refit is not null)
        || structure.Parts.Any(part => part.Out.Refit is not null) || structure.SubAssemblies.Any(unit => unit.Out.Refit is not null);

    /// <summary>What is put together destroys nothing, and sets alight what is said of it and what the words of its own tool say.</summary>
    private static Way Of(Way way, RefitWay back, HashSet<Fact> stances) => way with
    {
        Tool = back.Tool,
        Close = back.Takes,
        Clear = Needs(way.Clear, back, stances),
        Destroys = [],
        Danger = back.Danger,
        Posture = back.Posture,
        Cautions = back.Cautions,
        Origin = back.Origin,
    };

    private static WayOut Of(WayOut way, RefitWay back, HashSet<Fact> stances) =>
        way with
        {
            Tool = back.Tool,
            On = back.Takes,
            Clear = Needs(way.Clear, back, stances),
            Cautions = back.Cautions,
            Origin = back.Origin
        };

    private static ValueList<Fact> Needs(ValueList<Fact> apart, RefitWay back, HashSet<Fact> stances) =>
        [.. apart.Where(stances.Contains), .. back.Clear];
}
