namespace Refettle.Web.Edits;

/// <summary>A way to open a joint while it is typed.</summary>
public sealed class WayDraft(Way way)
{
    public string Tool { get; set; } = way.Tool;

    public string Open { get; set; } = Figures.Text(way.Open.Value);

    public string Close { get; set; } = Figures.Text(way.Close.Value);

    public WorkPlace Where { get; set; } = way.Where;

    public List<Fact> Clear { get; } = [.. way.Clear];

    public List<string> Destroys { get; } = [.. way.Destroys];

    /// <summary>A way that nothing is known of yet.</summary>
    public static Way Blank { get; } = new() { Id = "", Tool = "", Origin = Origin.User };

    /// <summary>The way as typed; a new one gets an identifier from its tool.</summary>
    public Way ToWay(Figures figures, int number, IEnumerable<string> taken)
    {
        var tool = string.IsNullOrWhiteSpace(Tool) ? "hands" : Tool.Trim();
        var typed = way with
        {
            Id = way.Id.Length > 0 ? way.Id : Description.FreeId(tool, taken),
            Tool = tool,
            Open = new(figures.Number($"way {number}, minutes to open", Open)),
            Close = new(figures.Number($"way {number}, minutes to close", Close)),
            Where = Where,
            Clear = Clear.ToValueList(),
            Destroys = Destroys.ToValueList(),
        };
        return (typed.Open, typed.Close) == (way.Open, way.Close) ? typed : typed with { Origin = Origin.User };
    }
}
