namespace Refettle.Kits;

/// <summary>Rewrites every identifier and every text of a structure. Roles stay as they are.</summary>
/// <param name="Name">For identifiers and what refers to them.</param>
/// <param name="Text">For what people read.</param>
internal sealed record Renaming(Func<string, string> Name, Func<string, string> Text)
{
    public Structure Of(Structure structure) => structure with
    {
        Zones = Map(structure.Zones, zone => zone with { Id = Name(zone.Id), Name = Text(zone.Name) }),
        States = Map(structure.States, Of),
        Parts = Map(structure.Parts, Of),
        Joints = Map(structure.Joints, Of),
        SubAssemblies = Map(structure.SubAssemblies, Of),
        Spaces = Map(structure.Spaces, Of),
    };

    public Part Of(Part part) => part with
    {
        Id = Name(part.Id),
        Name = Text(part.Name),
        Zone = Name(part.Zone),
        Out = Of(part.Out),
        Prop = Maybe(part.Prop),
        Limits = Map(part.Limits, Of),
    };

    public Joint Of(Joint joint) => joint with
    {
        Id = Name(joint.Id),
        Name = Maybe(joint.Name),
        Holds = Map(joint.Holds, Name),
        Ways = Map(joint.Ways, Of),
        Refit = Of(joint.Refit),
        Limits = Map(joint.Limits, Of),
    };

    public SubAssembly Of(SubAssembly unit) => unit with
    {
        Id = Name(unit.Id),
        Name = Text(unit.Name),
        Members = Map(unit.Members, Name),
        Out = Of(unit.Out),
        Prop = Maybe(unit.Prop),
    };

    public Space Of(Space space) => space with
    {
        Id = Name(space.Id),
        Name = Text(space.Name),
        Zone = Name(space.Zone),
        ClosedBy = Map(space.ClosedBy, Name),
        Limits = Map(space.Limits, Of),
    };

    public State Of(State state) => state with
    {
        Id = Name(state.Id),
        Name = Text(state.Name),
        Ways = Map(state.Ways, Of),
        Supports = Map(state.Supports, Name),
    };

    private Way Of(Way way) => way with
    {
        Tool = Text(way.Tool),
        Clear = Map(way.Clear, Of),
        Destroys = Map(way.Destroys, Name),
        Cautions = Map(way.Cautions, Text),
    };

    private WayOut Of(WayOut way) => way with
    {
        Clear = Map(way.Clear, Of),
        Tool = Maybe(way.Tool),
        Refit = Of(way.Refit),
        Cautions = Map(way.Cautions, Text),
    };

    private RefitWay? Of(RefitWay? back) => back is null ? null : back with
    {
        Tool = Text(back.Tool),
        Clear = Map(back.Clear, Of),
        Cautions = Map(back.Cautions, Text),
    };

    /// <summary>Where it stands is a citation: it stays as it was written.</summary>
    private StatedLimit Of(StatedLimit limit) => limit with { What = Text(limit.What) };

    private Fact Of(Fact fact) => fact with { Subject = Name(fact.Subject) };

    private string? Maybe(string? text) => text is null ? null : Text(text);

    private static ValueList<T> Map<T>(ValueList<T> items, Func<T, T> map) => items.Select(map).ToValueList();
}
