namespace Refettle.Web.Edits;

/// <summary>A part while it is typed.</summary>
public sealed class PartDraft(Part part)
{
    public string Name { get; set; } = part.Name;

    public string Zone { get; set; } = part.Zone;

    public Side Side { get; set; } = part.Side;

    public string Count { get; set; } = $"{part.Count}";

    public Scarcity Scarcity { get; set; } = part.Scarcity;

    public string Mass { get; set; } = Figures.Text(part.Mass?.Value);

    public string Price { get; set; } = Figures.Text(part.Price?.Amount);

    public string Off { get; set; } = Figures.Text(part.Out.Off.Value);

    public string On { get; set; } = Figures.Text(part.Out.On.Value);

    public string Tool { get; set; } = part.Out.Tool ?? "";

    public string Prop { get; set; } = part.Prop ?? "";

    public HashSet<Hazard> Hazards { get; } = [.. part.Hazards];

    /// <summary>A part that nothing is known of yet.</summary>
    public static Part Blank { get; } = new() { Id = "new", Name = "", Origin = Origin.User };

    /// <summary>The part as typed, under an identifier; what was not typed stays as it was.</summary>
    public Result<Part> ToPart(string id)
    {
        var figures = new Figures($"part {id}");
        var typed = part with
        {
            Id = id,
            Name = Name.Trim(),
            Zone = Zone,
            Side = Side,
            Count = figures.Count("count", Count),
            Scarcity = Scarcity,
            Mass = figures.Maybe("mass", Mass) is { } mass ? new Kilograms(mass) : null,
            Price = figures.Maybe("price", Price) is { } price ? new Money(price) : null,
            Prop = Words(Prop),
            Hazards = Enum.GetValues<Hazard>().Where(Hazards.Contains).ToValueList(),
            Out = OutAsTyped(figures),
        };
        var isNew = (typed.Mass, typed.Price, typed.Scarcity) != (part.Mass, part.Price, part.Scarcity);
        return figures.Faults.Count > 0
            ? Result<Part>.Bad(figures.Faults)
            : Result<Part>.Good(isNew ? typed with { Origin = Origin.User } : typed);
    }

    private WayOut OutAsTyped(Figures figures)
    {
        var typed = part.Out with { Off = new(figures.Number("off", Off)), On = new(figures.Number("on", On)), Tool = Words(Tool) };
        return (typed.Off, typed.On) == (part.Out.Off, part.Out.On) ? typed : typed with { Origin = Origin.User };
    }

    private static string? Words(string typed) => string.IsNullOrWhiteSpace(typed) ? null : typed.Trim();
}
