using NodaTime;
using Refettle.Logbook;
using Refettle.Web.Edits;

namespace Refettle.Web.Times;

/// <summary>A facility while it is typed.</summary>
public sealed class FacilityDraft(Facility facility)
{
    public string Name { get; set; } = facility.Name;

    public FacilityKind Kind { get; set; } = facility.Kind;

    public string Count { get; set; } = $"{facility.Count}";

    public string Pieces { get; set; } = $"{facility.MostPieces}";

    public string Area { get; set; } = Figures.Text(facility.MostSquareMetres);

    public DateOnly? First { get; set; } = facility.From?.ToDateOnly();

    public DateOnly? Last { get; set; } = facility.Until?.ToDateOnly();

    /// <summary>One that nothing is known of yet.</summary>
    public static Facility Blank { get; } = new() { Id = "new", Name = "" };

    /// <summary>The facility as typed, under an identifier; checked like one that is typed at a prompt.</summary>
    public Result<FacilityAdded> ToHappening(CarHistory history, string id)
    {
        var place = Name.Trim() is { Length: > 0 } name ? name : "facility";
        var figures = new Figures(place);
        var isCorner = Kind == FacilityKind.SprayCorner;
        var typed = facility with
        {
            Id = id,
            Name = Name.Trim(),
            Kind = Kind,
            Count = figures.Count("how many there are", Count),
            MostPieces = isCorner && Pieces.Trim().Length > 0 ? figures.Count("how many pieces fit in", Pieces) : null,
            MostSquareMetres = isCorner ? figures.Maybe("how much area fits in", Area) : null,
            From = First is { } first ? LocalDate.FromDateOnly(first) : null,
            Until = Last is { } last ? LocalDate.FromDateOnly(last) : null,
        };
        return figures.Checked(history, new FacilityAdded(typed), $"facility {id}");
    }
}
