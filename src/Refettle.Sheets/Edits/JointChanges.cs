using Refettle.Kits;

namespace Refettle.Sheets.Edits;

/// <summary>The keys of joints and of ways.</summary>
internal static class JointChanges
{
    public static readonly ChangeTable<Way> OfWay = new(
        new()
        {
            ["tool"] = (old, given, _) => old with { Tool = given.Tool },
            ["open"] = (old, given, _) => old with { Open = given.Open, Origin = given.Origin },
            ["close"] = (old, given, _) => old with { Close = given.Close, Origin = given.Origin },
            ["clear"] = (old, given, adds) => old with { Clear = Lists.Of(old.Clear, given.Clear, adds) },
            ["where"] = (old, given, _) => old with { Where = given.Where },
            ["odds"] = (old, given, _) => old with { Odds = given.Odds },
            ["destroys"] = (old, given, adds) => old with { Destroys = Lists.Of(old.Destroys, given.Destroys, adds) },
            ["spends"] = (old, given, _) => old with { Spends = given.Spends },
            ["posture"] = (old, given, _) => old with { Posture = given.Posture },
            ["cautions"] = (old, given, adds) => old with { Cautions = Lists.Of(old.Cautions, given.Cautions, adds) },
            ["danger"] = (old, given, adds) => old with { Danger = Lists.Of(old.Danger, given.Danger, adds) },
            ["origin"] = (old, given, _) => old with { Origin = given.Origin },
        },
        ["clear", "destroys", "cautions", "danger"]);

    public static readonly ChangeTable<Joint> OfJoint = RefitChanges.With<Joint>(new(
        new()
        {
            ["kind"] = (old, given, _) => Usual(old with { Kind = given.Kind }),
            ["name"] = (old, given, _) => old with { Name = given.Name },
            ["holds"] = (old, given, adds) => old with { Holds = Lists.Of(old.Holds, given.Holds, adds) },
            ["count"] = (old, given, _) => Usual(old with { Count = given.Count }),
            ["thread"] = (old, given, _) => Usual(old with { Thread = given.Thread, Origin = given.Origin }),
            ["grade"] = (old, given, _) => old with { Grade = given.Grade, Origin = given.Origin },
            ["torque"] = (old, given, _) => old with { Torque = given.Torque, Origin = given.Origin },
            ["single-use"] = (old, given, _) => old with { SingleUse = given.SingleUse },
            ["at-ride-height"] = (old, given, _) => old with { AtRideHeight = given.AtRideHeight },
            ["exposure"] = (old, given, _) => old with { Exposure = given.Exposure },
            ["origin"] = (old, given, _) => old with { Origin = given.Origin },
        },
        ["holds"]), joint => joint.Refit, (joint, way) => joint with { Refit = way });

    /// <summary>A way that was filled in by kind, thread and count follows them.</summary>
    private static Joint Usual(Joint joint) =>
        joint.Ways is [{ Origin: Origin.Default }] && DefaultWays.For(joint.Kind, joint.Thread, joint.Count) is { Count: > 0 } usual
        ? joint with { Ways = [usual[0] with { Clear = joint.Ways[0].Clear, Cautions = joint.Ways[0].Cautions }] }
        : joint;
}
