using Refettle.Kits;

namespace Refettle.Server.Tests;

/// <summary>A kit with two sides, one hole that the small car fills and one that stays loose.</summary>
internal static class SmallKit
{
    public static ValueList<Kit> All { get; } =
    [
        new()
        {
            Id = "tail-lamp",
            Name = "Tail lamp",
            About = "Lamp, bulb holder and gasket.",
            Origin = "Common practice, no source.",
            Spots = [Spot.Left, Spot.Right],
            Zone = "rear",
            Holes =
            [
                new() { Name = "body", Role = "body", Means = "what carries it", Side = HoleSide.None },
                new() { Name = "loom", Role = "loom", Means = "what feeds it", Side = HoleSide.None },
            ],
            Template = new()
            {
                Parts = [new() { Id = "{p}lamp", Name = "{Side} tail lamp", Zone = "{zone}", Hazards = [Hazard.Plastic] }],
                Joints =
                [
                    Joint("{p}lamp-nuts", JointKind.Nut, "{p}lamp", "{body}"),
                    Joint("{p}lamp-plug", JointKind.Connector, "{p}lamp", "{loom}"),
                ],
            },
        },
    ];

    private static Joint Joint(string id, JointKind kind, params string[] holds) =>
        new() { Id = id, Kind = kind, Holds = holds.ToValueList(), Ways = DefaultWays.For(kind, null, 1) };
}
