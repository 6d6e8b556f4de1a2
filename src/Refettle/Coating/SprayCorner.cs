using NodaTime;
using Refettle.Coating.Sessions;
using Refettle.Timeline.Spells;

namespace Refettle.Coating;

/// <summary>When the spray corner is there, and how much fits in then. Without one entered it is always there, for any number.</summary>
internal sealed class SprayCorner(CarCalendar calendar)
{
    private readonly List<Facility> _corners = [.. calendar.Facilities.Where(one => one.Kind == FacilityKind.SprayCorner)];

    /// <summary>Whether a coat can go on at a time and stay until it is dry. Its own spells say when it can be worked in; what
    /// dries may hang there between them.</summary>
    /// <param name="dry">Null where nobody has said.</param>
    public bool Serves(LocalDateTime at, LocalDateTime? dry) => _corners.Count == 0
        || _corners.Exists(corner => IsThere(corner, at.Date) && !((dry ?? at).Date > corner.Until) && IsWorkedIn(corner, at));

    /// <summary>All corners that are there on a day together; without a figure for one of them any number.</summary>
    public SessionRoom RoomOn(LocalDate day) => RoomOf(_corners.Where(corner => IsThere(corner, day)).ToList());

    /// <summary>As if all of them were there.</summary>
    public SessionRoom RoomOfAll => RoomOf(_corners);

    public string Names => string.Join(", ", _corners.Select(corner => corner.Name));

    /// <summary>Whether it is away on some days or hours.</summary>
    public bool ComesAndGoes =>
        _corners.Count > 0 && _corners.TrueForAll(corner => corner.From is not null || corner.Until is not null || Spells(corner).Any());

    /// <summary>When a coat can be taken out: dry to handle where its sheet says so, else as soon as the next one may go
    /// on; null where it says neither.</summary>
    /// <param name="read">Air that was read at the coat; null when it was not.</param>
    public LocalDateTime? DryAt(CoatingProduct product, LocalDateTime at, decimal? read) =>
        RecoatSpan.Cured(calendar, product, FigureKind.Handle, at, read)?.Time ?? RecoatSpan.After(calendar, product, at, read)?.Opens;

    /// <summary>Where no corner that says how much fits in is there, none is counted: that nothing goes on then
    /// is said by <see cref="Serves"/>.</summary>
    private SessionRoom RoomOf(List<Facility> there) =>
        _corners.Count == 0 || _corners.TrueForAll(corner => corner.MostPieces is null && corner.MostSquareMetres is null)
            ? SessionRoom.Endless
        : there.Count == 0 ? new(0, null)
        : new(
            there.Exists(corner => corner.MostPieces is null) ? null : there.Sum(corner => corner.Count * corner.MostPieces),
            there.Exists(corner => corner.MostSquareMetres is null) ? null : there.Sum(corner => corner.Count * corner.MostSquareMetres));

    private static bool IsThere(Facility corner, LocalDate day) => !(day < corner.From) && !(day > corner.Until);

    private bool IsWorkedIn(Facility corner, LocalDateTime at) =>
        !Spells(corner).Any()
        || Spells(corner)
            .Any(spell => SpellDays.Of(spell, at.Date).Reverse().Take(2).Any(day => day + spell.From <= at && at < End(spell, day)));

    private IEnumerable<Spell> Spells(Facility corner) => calendar.Spells.Where(spell => spell.Whose == corner.Id);

    private static LocalDateTime End(Spell spell, LocalDate day) => (spell.Until <= spell.From ? day.PlusDays(1) : day) + spell.Until;
}
