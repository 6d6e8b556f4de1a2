using Refettle.Kits;

namespace Refettle.Sheets.Reading;

/// <summary>Reads joints.</summary>
internal static class JointReader
{
    public static Joint Read(string id, Fields fields)
    {
        if (!fields.Has("kind"))
            fields.Missing("kind", "bolt, nut, clip, connector … (the list is in the description of the car sheet)");
        if (!fields.Has("holds"))
            fields.Missing("holds", "[part, part]");
        var joint = new Joint
        {
            Id = id,
            Kind = fields.Word("kind", JointKind.Seat),
            Name = fields.Text("name"),
            Holds = fields.Identifiers("holds"),
            Count = fields.Whole("count") ?? 1,
            Thread = fields.Text("thread"),
            Grade = fields.Text("grade"),
            Torque = fields.Torque("torque"),
            SingleUse = fields.Flag("single-use"),
            AtRideHeight = fields.Flag("at-ride-height"),
            Exposure = fields.Whole("exposure"),
            Kit = fields.Text("kit"),
            Limits = LimitReader.Limits(fields),
            Origin = fields.Word("origin", fields.Context.Given),
            Ways = [],
            Refit = RefitReader.Read(fields),
        };
        return joint with { Ways = WayReader.Ways(fields) ?? DefaultWays.For(joint.Kind, joint.Thread, joint.Count) };
    }
}
