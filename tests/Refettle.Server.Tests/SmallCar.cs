using Refettle.Logbook;

namespace Refettle.Server.Tests;

/// <summary>A rear end small enough to check by hand: an axle on leaf springs, its wheels, dampers, brake hose and propshaft.</summary>
internal static class SmallCar
{
    public const string Id = "small-heron";

    public static IEnumerable<Happening> Happenings =>
        [new CarOpened("Small Heron", 1988, "EUR"), new StructureAdded("sheet small.yaml", Structure, [])];

    public static Structure Structure => new()
    {
        Zones = [new() { Id = "rear", Name = "Rear underbody", Exposure = 4, Posture = "under" }],
        States = [Stance("on-wheels", "On its wheels"), Stance("on-stands", "On stands, wheels hanging")],
        Parts =
        [
            new() { Id = "body", Name = "Body shell", Fixed = true, Roles = ["body"] },
            Part("rear-axle", "Rear axle", 68, 10) with { Prop = "trolley jack under the differential", Scarcity = Scarcity.UsedOnly },
            Part("wheel-left", "Rear left wheel", 17, 1), Part("wheel-right", "Rear right wheel", 17, 1),
            Part("spring-left", "Rear left leaf spring", 14, 5), Part("spring-right", "Rear right leaf spring", 14, 5),
            Part("damper-left", "Rear left damper", 2, 1) with { Scarcity = Scarcity.Discontinued },
            Part("damper-right", "Rear right damper", 2, 1),
            Part("propshaft", "Rear propshaft", 11, 4),
            Part("brake-hose", "Rear brake hose", 0.2m, 1) with { Hazards = [Hazard.BrakeFluid, Hazard.Rubber] },
            Part("exhaust-rear", "Rear silencer", 8, 5) with { Scarcity = Scarcity.Unique },
        ],
        Joints =
        [
            .. new[] { "left", "right" }.SelectMany(Corner),
            Joint("prop-flange", JointKind.Bolt, ["propshaft", "rear-axle"], "13 mm ring spanner", 16, 4, Fact.State("on-stands")),
            Joint("hose-union", JointKind.Pipe, ["brake-hose", "body"], "11 mm flare spanner", 8, 1),
            Joint("hose-axle", JointKind.Pipe, ["brake-hose", "rear-axle"], "14 mm spanner", 9, 1, Fact.State("on-stands")),
            Joint("exhaust-clamp", JointKind.Clamp, ["exhaust-rear", "body"], "13 mm socket", 18, 1, Fact.State("on-stands")),
        ],
        Spaces = [new() { Id = "above-axle", Name = "Floor above the axle", Zone = "rear", ClosedBy = ["rear-axle", "exhaust-rear"] }],
    };

    private static IEnumerable<Joint> Corner(string side) =>
    [
        Joint($"wheel-nuts-{side}", JointKind.Nut, [$"wheel-{side}", "rear-axle"], "19 mm socket", 5, 5),
        Joint($"damper-lower-{side}", JointKind.Nut, [$"damper-{side}", "rear-axle"], "17 mm socket and spanner", 10, 1,
            Fact.State("on-stands"), Fact.Off($"wheel-{side}")),
        Joint($"damper-upper-{side}", JointKind.Nut, [$"damper-{side}", "body"], "17 mm socket and spanner", 14, 1,
            Fact.State("on-stands")),
        Joint($"u-bolts-{side}", JointKind.Nut, [$"spring-{side}", "rear-axle"], "19 mm deep socket", 20, 4, Fact.State("on-stands"),
            Fact.Off($"wheel-{side}")),
        Joint($"shackle-{side}", JointKind.Bolt, [$"spring-{side}", "body"], "breaker bar", 40, 2, Fact.State("on-stands")) with
            { AtRideHeight = true, Thread = "M12x1.25" },
    ];

    private static Part Part(string id, string name, decimal kilograms, decimal minutes) => new()
    {
        Id = id,
        Name = name,
        Zone = "rear",
        Mass = new(kilograms),
        Out = new() { Off = new(minutes), On = new(minutes * 2), Clear = [Fact.State("on-stands")], Origin = Origin.User },
        Origin = Origin.CommonPractice,
    };

    private static Joint Joint(
        string id, JointKind kind, ValueList<string> holds, string tool, decimal open, int count, params Fact[] clear) => new()
        {
            Id = id,
            Kind = kind,
            Holds = holds,
            Count = count,
            Ways = [new()
            { Id = "way", Tool = tool, Open = new(open), Close = new(open * 1.3m), Clear = clear.ToValueList(),
                Origin = Origin.CommonPractice }],
            Origin = Origin.CommonPractice,
        };

    private static State Stance(string id, string name) => new()
    {
        Id = id,
        Name = name,
        IsStance = true,
        Ways = [new()
            { Id = "way", Tool = "trolley jack and four stands", Open = new(15), Close = new(10),
                Cautions = ["Level firm floor. Never under a car held by a jack alone."], Origin = Origin.User }],
        Supports = ["body"],
    };
}
