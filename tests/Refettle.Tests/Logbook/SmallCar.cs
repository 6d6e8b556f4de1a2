using Refettle.Logbook;

namespace Refettle.Tests.Logbook;

/// <summary>A body, an axle with a damper as one unit, a wheel, a tank: enough to strip and refit.</summary>
internal static class SmallCar
{
    public static Structure Structure { get; } = new()
    {
        Zones = [new() { Id = "rear", Name = "Rear", Exposure = 4, Posture = "under" }],
        States =
        [
            State("battery-off", stance: false),
            State("on-wheels", stance: true),
            State("on-stands", stance: true, "body"),
        ],
        Parts =
        [
            new() { Id = "body", Name = "Body", Fixed = true },
            Part("axle"), Part("damper"), Part("wheel"), Part("tank"),
        ],
        Joints =
        [
            Joint("axle-body", "axle", "body"),
            Joint("damper-axle", "damper", "axle"),
            Joint("damper-body", "damper", "body"),
            Joint("wheel-axle", "wheel", "axle"),
            Joint("tank-body", "tank", "body"),
        ],
        SubAssemblies = [new() { Id = "axle-unit", Name = "Axle with damper", Members = ["axle", "damper"] }],
        Spaces = [new() { Id = "floor", Name = "Floor above the tank", Zone = "rear", ClosedBy = ["tank"] }],
    };

    public static Happening[] Opening { get; } =
        [new CarOpened("Heron", 1988, "EUR"), new StructureAdded("sheet small.yaml", Structure, [])];

    /// <summary>Written by one device, read at once.</summary>
    public static CarHistory After(params Happening[] happenings)
    {
        var device = new TestDevice("bench");
        foreach (var happening in Opening.Concat(happenings))
            device.Write(happening);
        return device.History();
    }

    private static Part Part(string id) => new() { Id = id, Name = id, Zone = "rear" };

    private static Joint Joint(string id, params string[] holds) => new()
    {
        Id = id,
        Holds = holds.ToValueList(),
        Ways = [new() { Id = "spanner", Tool = "13 mm spanner", Open = new(5), Close = new(6) }],
    };

    private static State State(string id, bool stance, params string[] supports) => new()
    {
        Id = id,
        Name = id,
        IsStance = stance,
        Ways = [new() { Id = "do", Tool = "hands", Open = new(1) }],
        Supports = supports.ToValueList(),
    };
}
