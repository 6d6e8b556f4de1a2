namespace Refettle.Sheets.Edits;

/// <summary>The keys of states, spaces and zones.</summary>
internal static class OtherChanges
{
    public static readonly ChangeTable<State> OfState = new(
        new()
        {
            ["name"] = (old, given, _) => old with { Name = given.Name },
            ["stance"] = (old, given, _) => old with { IsStance = given.IsStance },
            ["supports"] = (old, given, adds) => old with { Supports = Lists.Of(old.Supports, given.Supports, adds) },
            ["drains"] = (old, given, adds) => old with { Drains = Lists.Of(old.Drains, given.Drains, adds) },
        },
        ["supports", "drains"]);

    public static readonly ChangeTable<Space> OfSpace = new(
        new()
        {
            ["name"] = (old, given, _) => old with { Name = given.Name },
            ["zone"] = (old, given, _) => old with { Zone = given.Zone },
            ["closed-by"] = (old, given, adds) => old with { ClosedBy = Lists.Of(old.ClosedBy, given.ClosedBy, adds) },
        },
        ["closed-by"]);

    public static readonly ChangeTable<Zone> OfZone = new(
        new()
        {
            ["name"] = (old, given, _) => old with { Name = given.Name },
            ["exposure"] = (old, given, _) => old with { Exposure = given.Exposure },
            ["posture"] = (old, given, _) => old with { Posture = given.Posture },
        },
        []);
}
