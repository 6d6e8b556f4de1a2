using Refettle.Logbook;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>A car and what it is made of.</summary>
internal static class CarView
{
    public static IRenderable Of(Car car)
    {
        var structure = car.Structure;
        return new Rows(
            new Markup($"[bold]{car.Name.Safe()}[/]{(car.Year is { } year ? $", {year}" : "")} ({car.Id.Safe()})"),
            new Text($"{Wording.Count(structure.Parts.Count, "part")}, {Wording.Count(structure.Joints.Count, "joint")}, {Wording.Count(structure.SubAssemblies.Count, "sub-assembly", "sub-assemblies")}, {Wording.Count(structure.States.Count, "state")}, {Wording.Count(structure.Spaces.Count, "space")}, {Wording.Count(structure.LooseEnds.Count(end => !end.IsOptional), "loose end")}"),
            new Text($"stands: {car.Stance ?? "not known"}"),
            new Text(car.Done.Count == 0
                ? "nothing is off or open yet"
                : $"done: {Wording.Facts(car.Done.Where(fact => fact.Kind is FactKind.Off or FactKind.Open or FactKind.State).ToValueList())}"),
            Text.Empty,
            Zones(car));
    }

    public static IRenderable Listed(Car car, ThingKind kind)
    {
        var table = new Table { Border = TableBorder.None, ShowHeaders = false };
        table.AddColumns("", "", "");
        foreach (var (id, name, more) in Rows(car.Structure, kind))
            table.AddRow(new Text(id), new Text(name), new Text(more));
        return table.Rows.Count == 0 ? new Text("none") : table;
    }

    private static Table Zones(Car car)
    {
        var names = car.Structure.Zones.ToDictionary(zone => zone.Id, zone => zone.Name);
        var table = new Table { Border = TableBorder.None };
        table.AddColumns("Zone", "Parts");
        table.Columns[0].NoWrap();
        foreach (var zone in car.Structure.Parts.GroupBy(part => part.Zone).OrderBy(zone => zone.Key, StringComparer.Ordinal))
            table.AddRow(new Text(names.GetValueOrDefault(zone.Key, zone.Key)),
                new Text(string.Join(", ", zone.Select(part => part.Id).Order(StringComparer.Ordinal))));
        return table;
    }

    private static IEnumerable<(string Id, string Name, string More)> Rows(Structure structure, ThingKind kind) => (kind switch
    {
        ThingKind.Part => structure.Parts.Select(part => (part.Id, part.Name, Wording.Of(part.Scarcity))),
        ThingKind.Joint =>
            structure.Joints
                .Select(joint => (joint.Id, joint.Name ?? string.Join(" – ", joint.Holds),
                    $"{joint.Count} × {joint.Kind.ToString().ToLowerInvariant()}{(joint.Thread is null ? "" : $" {joint.Thread}")}")),
        ThingKind.State => structure.States.Select(state => (state.Id, state.Name, state.IsStance ? "stance" : "")),
        ThingKind.Space => structure.Spaces.Select(space => (space.Id, space.Name, $"closed by {string.Join(", ", space.ClosedBy)}")),
        ThingKind.SubAssembly => structure.SubAssemblies.Select(group => (group.Id, group.Name, string.Join(", ", group.Members))),
        _ => structure.Zones.Select(zone => (zone.Id, zone.Name, $"{zone.Posture}, exposure {zone.Exposure} of 4")),
    }).OrderBy(row => row.Item1, StringComparer.Ordinal);
}
