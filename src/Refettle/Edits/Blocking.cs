namespace Refettle.Edits;

/// <summary>Puts something in the way of a fact.</summary>
public static class Blocking
{
    /// <summary>The changed things: every way to the fact, or a part's way out, needs the others too.</summary>
    /// <param name="structure">The car's.</param>
    /// <param name="fact"><c>off</c>, <c>open</c> or <c>state</c>; the others have no way of their own, and nothing changes.</param>
    public static Structure Of(Structure structure, Fact fact, ValueList<Fact> needs) => fact.Kind switch
    {
        FactKind.Off => new()
        {
            Parts = Changed(structure.Parts, part => part.Id == fact.Subject, part => part with { Out = Of(part.Out, needs) }),
            SubAssemblies = Changed(structure.SubAssemblies, group => group.Id == fact.Subject,
                group => group with { Out = Of(group.Out, needs) }),
        },
        FactKind.Open =>
            new()
            {
                Joints = Changed(structure.Joints, joint => joint.Id == fact.Subject,
                joint => joint with { Ways = Of(joint.Ways, needs) })
            },
        FactKind.State =>
            new()
            {
                States = Changed(structure.States, state => state.Id == fact.Subject,
                state => state with { Ways = Of(state.Ways, needs) })
            },
        _ => Structure.Empty,
    };

    private static WayOut Of(WayOut way, ValueList<Fact> needs) => way with { Clear = Union(way.Clear, needs) };

    private static ValueList<Way> Of(ValueList<Way> ways, ValueList<Fact> needs) =>
        ways.Select(way => way with { Clear = Union(way.Clear, needs) }).ToValueList();

    private static ValueList<Fact> Union(ValueList<Fact> facts, ValueList<Fact> more) => facts.Union(more).ToValueList();

    private static ValueList<T> Changed<T>(ValueList<T> things, Func<T, bool> isMeant, Func<T, T> change) =>
        things.Where(isMeant).Select(change).ToValueList();
}
