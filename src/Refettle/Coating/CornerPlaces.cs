using NodaTime;

namespace Refettle.Coating;

/// <summary>Hangs each part of a plan in one of several corners until it is dry. A part that is coated again
/// before it is dry stays where it is.</summary>
internal sealed class CornerPlaces
{
    private const int MostTries = 20_000;

    /// <param name="Until">Dry then.</param>
    /// <param name="May">The corners that serve it.</param>
    private sealed record Stay(string Part, LocalDateTime At, LocalDateTime Until, ValueList<Facility> May);

    private readonly Car _car;
    private readonly List<Stay> _stays;
    private readonly Facility[] _in;
    private int _tries;

    private CornerPlaces(Car car, ValueList<SpraySession> sessions)
    {
        _car = car;
        _stays = [.. Before(),
            .. sessions.SelectMany(session => session.Parts.Select(part => Of(session, part.Part))).OrderBy(stay => stay.At)];
        _in = new Facility[_stays.Count];
    }

    /// <returns>The corner of each part of each session; null where none was found.</returns>
    public static IReadOnlyDictionary<(LocalDateTime At, string Part), string>? Of(Car car, ValueList<SpraySession> sessions)
    {
        var places = new CornerPlaces(car, sessions);
        return !places.Hang(0) ? null
            : places._stays.Zip(places._in).GroupBy(one => (one.First.At, one.First.Part))
                .ToDictionary(group => group.Key, group => group.First().Second.Id);
    }

    /// <summary>What dries from before hangs somewhere: where, nobody has said.</summary>
    private IEnumerable<Stay> Before() => PartProgress.All(_car.Coating).Where(part => part.Last is not null)
        .Select(part => new Stay(part.Part, part.Last!.At, Dry(part.Last.Product, part.Last.At, part.Last.Celsius),
            CornerPlan.Corners(_car).ToValueList()));

    private Stay Of(SpraySession session, string part)
    {
        var dry = Dry(session.Product, session.At, null);
        return new(part, session.At, dry,
            CornerPlan.Corners(_car).Where(corner => new SprayCorner(_car.Calendar with { Facilities = [corner] }).Serves(session.At, dry))
                .ToValueList());
    }

    private LocalDateTime Dry(string product, LocalDateTime at, decimal? read) =>
        _car.Coating.Product(product) is { } known ? new SprayCorner(_car.Calendar).DryAt(known, at, read) ?? at : at;

    private bool Hang(int place)
    {
        if (place == _stays.Count)
            return true;
        foreach (var corner in Wet(place) is { } wet ? _stays[place].May.Where(one => one == wet) : _stays[place].May)
        {
            _in[place] = corner;
            if (_tries++ < MostTries && HasRoom(corner, place) && Hang(place + 1))
                return true;
        }

        return false;
    }

    /// <summary>Where the same part still dries.</summary>
    private Facility? Wet(int place)
    {
        var last = Enumerable.Range(0, place)
            .LastOrDefault(other => _stays[other].Part == _stays[place].Part && _stays[other].Until > _stays[place].At, -1);
        return last < 0 ? null : _in[last];
    }

    /// <summary>All that is in there when this one goes in.</summary>
    private bool HasRoom(Facility corner, int place)
    {
        var here = Enumerable.Range(0, place + 1)
            .Where(other => _in[other] == corner && (_stays[other].At == _stays[place].At || _stays[other].Until > _stays[place].At))
            .Select(other => _stays[other].Part).Distinct();
        var load = here.Select(part => SprayRoom.Load(_car, part)).Aggregate(default(Sessions.SessionLoad), (sum, one) => sum + one);
        return !(load.Pieces > corner.Count * corner.MostPieces) && !(load.SquareMetres > corner.Count * corner.MostSquareMetres);
    }
}
