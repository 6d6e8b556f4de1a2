namespace Refettle.Kits;

/// <summary>A way for a joint that has none: tool and minutes by kind, thread and count. Common practice, no source; every one is
/// marked <see cref="Origin.Default"/>.</summary>
public static class DefaultWays
{
    /// <summary>One way; none for a weld or bond, whose opening destroys something that only the user can name.</summary>
    public static ValueList<Way> For(JointKind kind, string? thread, int count)
    {
        if (kind is JointKind.Weld or JointKind.Bond)
            return [];
        var (tool, once, openEach, closeEach) = Usual(kind, thread);
        var alike = Math.Max(1, count);
        return [new Way
        {
            Id = "usual",
            Tool = tool,
            Open = new(once + (openEach * alike)),
            Close = new(once + (closeEach * alike)),
            Origin = Origin.Default,
        }];
    }

    /// <summary>Minutes once for getting at it, and for each of a joint's fasteners.</summary>
    private static (string Tool, decimal Once, decimal OpenEach, decimal CloseEach) Usual(JointKind kind, string? thread) => kind switch
    {
        JointKind.Bolt or JointKind.Nut => ($"{HexHeads.Size(thread)} socket".Trim(), 1, 1.5m, 2),
        JointKind.Stud => ("stud extractor", 2, 4, 3),
        JointKind.Screw => ("screwdriver", 0.5m, 0.5m, 0.5m),
        JointKind.Clip => ("trim lever", 0, 0.5m, 0.5m),
        JointKind.Connector => ("hands", 0.5m, 0.5m, 0.5m),
        JointKind.Hose => ("hose clip pliers", 1, 2, 2),
        JointKind.Pipe => ("flare-nut spanner", 1, 3, 4),
        JointKind.Clamp => ("socket", 1, 2, 3),
        JointKind.Cable => ("pliers", 1, 3, 4),
        JointKind.Pin => ("drift and hammer", 1, 3, 3),
        JointKind.PressFit => ("press or puller", 5, 10, 10),
        JointKind.Taper => ("taper separator", 2, 6, 3),
        JointKind.Spline => ("puller", 1, 4, 3),
        JointKind.Hook => ("hands", 0, 1, 1),
        JointKind.Strap => ("socket", 1, 3, 4),
        JointKind.Seal => ("plastic wedge", 2, 5, 10),
        JointKind.Rivet => ("drill and rivet pliers", 2, 1.5m, 1),
        _ => ("hands", 0, 1, 1),
    };
}
