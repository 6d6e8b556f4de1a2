namespace Refettle.Tests.Checks;

/// <summary>Short hands for structures in tests.</summary>
internal static class Small
{
    public static Part Part(string id, params Fact[] clear) => new() { Id = id, Name = id, Out = new() { Clear = [.. clear] } };

    public static Part Body { get; } = new() { Id = "body", Name = "Body", Fixed = true, Roles = ["body"] };

    public static Way Way(params Fact[] clear) => new() { Id = "hand", Tool = "hands", Open = new(1), Close = new(1), Clear = [.. clear] };

    public static Joint Joint(string id, string one, string other, params Fact[] clear) =>
        new() { Id = id, Kind = JointKind.Bolt, Holds = [one, other], Ways = [Way(clear)] };

    public static State Stance(string id) => new() { Id = id, Name = id, IsStance = true, Ways = [Way()] };

    public static Structure Of(params object[] things) => new()
    {
        Zones = [.. things.OfType<Zone>()],
        States = [.. things.OfType<State>()],
        Parts = [.. things.OfType<Part>()],
        Joints = [.. things.OfType<Joint>()],
        SubAssemblies = [.. things.OfType<SubAssembly>()],
        Spaces = [.. things.OfType<Space>()],
    };
}
