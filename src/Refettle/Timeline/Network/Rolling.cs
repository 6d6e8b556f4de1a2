using Refettle.Access;

namespace Refettle.Timeline.Network;

/// <summary>Whether a car rolls: all that carries it is on, sound, and joined.</summary>
/// <remarks>Which parts carry a car is common practice, no source; a sheet or kit says of further ones that
/// it <see cref="RollsOn"/> them.</remarks>
public static class Rolling
{
    /// <summary>The role by which a sheet or kit says that the car rolls on a part.</summary>
    public const string RollsOn = "rolls-on";

    private static readonly string[] _carrying =
    [
        RollsOn, "wheel", "hub", "half-shaft", "knuckle", "axle", "spring", "spring-plate", "strut", "upper-arm", "lower-arm",
        "trailing-arm", "track-rod-end",
        "subframe-front", "subframe-rear",
    ];

    private static readonly JointKind[] _loose = [JointKind.Connector, JointKind.Hose, JointKind.Pipe, JointKind.Clip];

    /// <summary>Whether the car rolls on a part.</summary>
    public static bool Carries(Part part) => part.Roles.Any(_carrying.Contains);

    /// <summary>What keeps the car from rolling, in words; empty when it rolls, and when no part of it is said to carry it.</summary>
    public static IEnumerable<string> Against(CarStanding standing) => PartsAgainst(standing).Concat(JointsAgainst(standing));

    private static IEnumerable<string> PartsAgainst(CarStanding standing) => standing.Car.Structure.Parts.Where(Carries)
        .Where(part => standing.IsTrue(Fact.Off(part.Id)) || standing.Car.Unsound.Contains(part.Id))
        .Select(part => $"{part.Name} {(standing.IsTrue(Fact.Off(part.Id)) ? "off" : "too weak")}");

    /// <summary>Joints that carry: between parts that it rolls on, or one of them and the shell. Of what
    /// is off the part itself is named.</summary>
    private static IEnumerable<string> JointsAgainst(CarStanding standing) => standing.Car.Structure.Joints
        .Where(joint => !_loose.Contains(joint.Kind) && standing.IsTrue(Fact.Open(joint.Id)))
        .Where(joint => joint.Holds.Select(name => standing.Parts[name]) is var held && held.Any(Carries)
            && held.All(part => (part.Fixed || Carries(part)) && !standing.IsTrue(Fact.Off(part.Id))))
        .Select(joint => $"{Access.Wording.JointName(joint, standing)} open");
}
