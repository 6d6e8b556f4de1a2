using Refettle.CloseUp;
using Refettle.Judging;
using Refettle.Logbook;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>All about one part, joint or other thing: what is set, and where it comes from.</summary>
internal static class ThingView
{
    /// <param name="undecided">Torques of the joint that contradict each other; null when there are none.</param>
    /// <param name="names">What the devices are called that recorded them.</param>
    public static IRenderable Of(Car car, Thing thing, TorqueConflict? undecided = null, DeviceNames? names = null)
    {
        var grid = new Grid();
        grid.AddColumn(new GridColumn().NoWrap());
        grid.AddColumn();
        foreach (var (key, value) in Rows(car.Structure, thing).Where(row => !string.IsNullOrEmpty(row.Value)))
            grid.AddRow(new Text(key), new Text(value!));
        return new Rows([new Markup($"[bold]{thing.ToString().Safe()}[/]"), grid, .. Undecided(undecided, names ?? DeviceNames.None)]);
    }

    private static IEnumerable<IRenderable> Undecided(TorqueConflict? conflict, DeviceNames names) => conflict is null ? [] :
    [
        new Markup("[bold]Undecided: torques are recorded that did not know of each other[/]"),
        .. conflict.Told.Select(one => new Text($"  {one.Says(names)}")),
        new Text($"Decide by an entry: refettle strike the wrong one, or refettle torqued {conflict.Joint} anew."),
    ];

    private static IEnumerable<(string Key, string? Value)> Rows(Structure structure, Thing thing) => thing.Kind switch
    {
        ThingKind.Part => Part(structure.Parts.First(part => part.Id == thing.Id), structure),
        ThingKind.Joint => Joint(structure.Joints.First(joint => joint.Id == thing.Id)),
        ThingKind.State => State(structure.States.First(state => state.Id == thing.Id)),
        ThingKind.Space => Space(structure.Spaces.First(space => space.Id == thing.Id)),
        ThingKind.SubAssembly => Group(structure.SubAssemblies.First(group => group.Id == thing.Id)),
        _ => Zone(structure.Zones.First(zone => zone.Id == thing.Id)),
    };

    private static IEnumerable<(string, string?)> Part(Part part, Structure structure) =>
    [
        ("name", part.Name), ("zone", part.Zone), ("side", part.Side == Side.None ? null : part.Side.ToString().ToLowerInvariant()),
        ("count", part.Count == 1 ? null : $"{part.Count}"), ("scarcity", Wording.Of(part.Scarcity)), ("mass", part.Mass?.ToString()),
        ("price", part.Price?.ToString()),
        ("hazards", string.Join(", ", part.Hazards.Select(hazard => hazard.ToString().ToLowerInvariant()))),
        ("duties", string.Join(", ", part.Duties.Select(duty => duty.ToString().ToLowerInvariant()))),
        ("roles", string.Join(", ", part.Roles)),
        ("fixed", part.Fixed ? "never comes off" : null), ("kit", part.Kit), ("origin", Wording.Of(part.Origin)),
        .. Out(part.Out), ("hold up by", part.Prop), ("limits", Limits($"part {part.Id}", part.Limits)),
        ("joints", string.Join(", ", structure.Joints.Where(joint => joint.Holds.Contains(part.Id)).Select(joint => joint.Id))),
    ];

    private static IEnumerable<(string, string?)> Out(WayOut way) =>
    [
        ("lift out", $"{way.Off}, back in place {way.On} ({Wording.Of(way.Origin)})"), ("first", Wording.Facts(way.Clear)),
        ("tool", way.Tool), ("cautions", string.Join("\n", way.Cautions)), ("goes in", Refit(way.Refit)),
    ];

    private static IEnumerable<(string, string?)> Joint(Joint joint) =>
    [
        ("name", joint.Name), ("kind", joint.Kind.ToString().ToLowerInvariant()), ("holds", string.Join(", ", joint.Holds)),
        ("count", $"{joint.Count}"),
        ("thread", joint.Thread), ("grade", joint.Grade), ("torque", joint.Torque?.ToString()),
        ("new each time", joint.SingleUse ? "yes" : null),
        ("torque at ride height", joint.AtRideHeight ? "yes" : null), ("exposure", joint.Exposure?.ToString()), ("kit", joint.Kit),
        ("origin", Wording.Of(joint.Origin)), ("limits", Limits($"joint {joint.Id}", joint.Limits)),
        .. joint.Ways.Select(way => ($"way {way.Id}", (string?)Way(way))), ("closed by", Refit(joint.Refit)),
    ];

    private static string? Refit(RefitWay? way) => way is null ? null : string.Join("\n",
    [
        $"{way.Tool}: {way.Takes} ({Wording.Of(way.Origin)})",
        .. way.Clear.Count == 0 ? [] : new[] { $"while: {Wording.Facts(way.Clear)}" },
        .. way.Cautions.Select(caution => $"! {caution}"),
    ]);

    private static IEnumerable<(string, string?)> State(State state) =>
    [
        ("name", state.Name), ("stance", state.IsStance ? "yes" : null), ("rests on", string.Join(", ", state.Supports)),
        ("drains", string.Join(", ", state.Drains.Select(hazard => hazard.ToString().ToLowerInvariant()))), ("kit", state.Kit),
        .. state.Ways.Select(way => ($"way {way.Id}", (string?)Way(way))),
    ];

    private static IEnumerable<(string, string?)> Space(Space space) =>
        [("name", space.Name), ("zone", space.Zone), ("closed by", string.Join(", ", space.ClosedBy)), ("kit", space.Kit),
            ("limits", Limits($"space {space.Id}", space.Limits))];

    /// <summary>As the sheet says them: the owner's own entries may say otherwise.</summary>
    private static string Limits(string thing, ValueList<StatedLimit> limits) =>
        string.Join("\n", limits.Select(limit => LimitWords.Of(limit.For(thing))));

    private static IEnumerable<(string, string?)> Group(SubAssembly group) =>
        [("name", group.Name), ("members", string.Join(", ", group.Members)), .. Out(group.Out), ("hold up by", group.Prop),
            ("kit", group.Kit)];

    private static IEnumerable<(string, string?)> Zone(Zone zone) =>
        [("name", zone.Name), ("exposure", $"{zone.Exposure} of 4"), ("posture", zone.Posture)];

    private static string Way(Way way)
    {
        var lines = new List<string>
            { $"{way.Tool}{(way.Where == WorkPlace.OnBench ? ", on the bench" : "")}: open {way.Open}, close {way.Close} ({Wording.Of(way.Origin)})" };
        if (way.Clear.Count > 0)
            lines.Add($"first: {Wording.Facts(way.Clear)}");
        if (way.Destroys.Count > 0)
            lines.Add($"destroys {string.Join(", ", way.Destroys)}");
        lines.AddRange(way.Cautions.Select(caution => $"! {caution}"));
        return string.Join("\n", lines);
    }
}
