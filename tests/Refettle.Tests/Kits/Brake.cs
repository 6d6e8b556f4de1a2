using Refettle.Kits;
using static Refettle.Tests.Checks.Small;

namespace Refettle.Tests.Kits;

/// <summary>Two small kits that need each other: a brake and a hub with wheel.</summary>
internal static class Brake
{
    public static Structure Start { get; } =
        Of(Body, new Zone { Id = "corner-rl", Name = "Rear left" }, new Zone { Id = "corner-rr", Name = "Rear right" });

    /// <summary>A drum on a hub, under a wheel, with a pipe from hole to hole that waits for both.</summary>
    public static Kit Drum { get; } = new()
    {
        Id = "drum",
        Name = "Drum brake",
        Origin = "Test",
        Spots = [Spot.RearLeft, Spot.RearRight],
        Zone = "corner-{side}",
        Holes =
        [
            new() { Name = "hub", Role = "hub" },
            new() { Name = "wheel", Role = "wheel", IsOptional = true },
            new() { Name = "feed", Role = "pipe" },
            new() { Name = "axle", Role = "axle-unit", Joins = ["{p}drum"], IsOptional = true },
        ],
        Template = Of(
            Part("{p}drum", Fact.Off("{wheel}"), Fact.Open("{p}drum-seat")) with
            { Name = "{Side} drum", Zone = "{zone}", Roles = ["drum"] },
            Joint("{p}drum-seat", "{p}drum", "{hub}", Fact.Off("{wheel}")),
            Joint("{p}drum-stop", "{p}drum", "body"),
            Joint("{p}bridge", "{hub}", "{feed}")),
    };

    public static Kit Hub { get; } = new()
    {
        Id = "hub",
        Name = "Hub and wheel",
        Origin = "Test",
        Spots = [Spot.RearLeft, Spot.RearRight],
        Zone = "corner-{side}",
        Template = Of(
            Part("{p}hub") with { Name = "{Side} hub", Roles = ["hub"] },
            Part("{p}wheel") with { Name = "{Side} wheel", Roles = ["wheel"] },
            Joint("{p}hub-bolts", "{p}hub", "body"),
            Joint("{p}wheel-nuts", "{p}wheel", "{p}hub")),
    };

    public static Kit Pipe { get; } = new()
    {
        Id = "pipe",
        Name = "Pipe",
        Origin = "Test",
        Template = Of(Part("{p}pipe") with { Roles = ["pipe"] }, Joint("{p}pipe-clip", "{p}pipe", "body")),
    };

    public static Structure Add(
        this Structure car, Kit kit, Spot spot = Spot.None, string? prefix = null, params (string Hole, string Part)[] choices) =>
        KitAddition.Propose(car, kit, spot, prefix,
            choices.ToDictionary(choice => choice.Hole, choice => choice.Part)).Value.Entry is var entry
            ? car.With(entry.Added, entry.Tied) : car;

    public static Joint? JointOf(this Structure car, string id) => car.Joints.SingleOrDefault(joint => joint.Id == id);

    public static Part PartOf(this Structure car, string id) => car.Parts.Single(part => part.Id == id);
}
