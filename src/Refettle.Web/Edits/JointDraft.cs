using Refettle.Kits;

namespace Refettle.Web.Edits;

/// <summary>A joint while it is typed.</summary>
public sealed class JointDraft(Joint joint)
{
    public string Name { get; set; } = joint.Name ?? "";

    public JointKind Kind { get; set; } = joint.Kind;

    public List<string> Holds { get; } = [.. joint.Holds];

    public string Count { get; set; } = $"{joint.Count}";

    public string Thread { get; set; } = joint.Thread ?? "";

    public string Torque { get; set; } = Figures.Text(joint.Torque?.Value);

    public bool SingleUse { get; set; } = joint.SingleUse;

    public bool AtRideHeight { get; set; } = joint.AtRideHeight;

    public List<WayDraft> Ways { get; } = [.. joint.Ways.Select(way => new WayDraft(way))];

    /// <summary>A joint of a part that nothing more is known of yet.</summary>
    public static Joint Blank(string? part) => new() { Id = "new", Holds = part is null ? [] : [part], Ways = [], Origin = Origin.User };

    /// <summary>The joint as typed, under an identifier. One without ways gets the usual one for its kind, marked as a default.</summary>
    public Result<Joint> ToJoint(string id)
    {
        var figures = new Figures($"joint {id}");
        var typed = joint with
        {
            Id = id,
            Name = string.IsNullOrWhiteSpace(Name) ? null : Name.Trim(),
            Kind = Kind,
            Holds = Holds.ToValueList(),
            Count = figures.Count("count", Count),
            Thread = string.IsNullOrWhiteSpace(Thread) ? null : Thread.Trim(),
            Torque = figures.Maybe("torque", Torque) is { } torque ? new NewtonMetres(torque) : null,
            SingleUse = SingleUse,
            AtRideHeight = AtRideHeight,
        };
        typed = typed with { Ways = Ways.Count > 0 ? WaysAsTyped(figures) : DefaultWays.For(typed.Kind, typed.Thread, typed.Count) };
        var isNew = (typed.Thread, typed.Torque) != (joint.Thread, joint.Torque);
        return figures.Faults.Count > 0
            ? Result<Joint>.Bad(figures.Faults)
            : Result<Joint>.Good(isNew ? typed with { Origin = Origin.User } : typed);
    }

    private ValueList<Way> WaysAsTyped(Figures figures)
    {
        var ways = new List<Way>();
        foreach (var way in Ways)
            ways.Add(way.ToWay(figures, ways.Count + 1, ways.Select(other => other.Id)));
        return ways.ToValueList();
    }
}
