using NodaTime;
using Refettle.Coating.Sessions;
using Refettle.Timeline.Spells;

namespace Refettle.Coating;

/// <summary>Turns parts, windows and weather into a question of sessions; parts that are alike become one row.</summary>
internal sealed class RowBook
{
    private readonly CoatingQuestion _question;
    private readonly Dictionary<string, ValueList<int>> _airy = [];
    private readonly Dictionary<string, ValueList<int>> _takes = [];
    private readonly Dictionary<string, ValueList<int>> _may = [];
    private readonly Dictionary<string, ValueList<ValueList<int>>> _after = [];

    public RowBook(CoatingQuestion question)
    {
        (_question, Corner, Occasions) =
            (question, new(question.Car.Calendar), Occasion.Of(question.Car.Calendar, question.From, question.Days));
        Rooms = Occasions.Select(one => Corner.RoomOn(one.At.Date)).ToValueList();
    }

    public ValueList<Occasion> Occasions { get; }

    public SprayCorner Corner { get; }

    /// <summary>What fits in at each occasion.</summary>
    private ValueList<SessionRoom> Rooms { get; }

    /// <summary>What fits in when most does.</summary>
    public SessionRoom Room => Of([]).MostRoom;

    /// <summary>The question for some rows: what dries from before takes its room first.</summary>
    public SessionQuestion Ask(ValueList<CoatRow> rows)
    {
        var dries = IsRoomy
            ? []
            : PartProgress.All(_question.Car.Coating)
                .Select(part => (Until: TakenUntil(part), Load: SprayRoom.Load(_question.Car, part.Part))).Where(one => one.Until >= 0)
                .ToList();
        return Of(rows) with
        {
            Rooms = Rooms.Select((room, one) => dries.Where(part => part.Until >= one)
            .Aggregate(room, (left, part) => left.Without(part.Load))).ToValueList()
        };
    }

    private SessionQuestion Of(ValueList<CoatRow> rows) => new(Occasions.Count, rows) { Rooms = Rooms };

    private bool IsRoomy => Of([]).IsRoomy;

    public CoatingProduct Product(string id) => _question.Car.Coating.Product(id)!;

    /// <summary>The rows, each with its parts; where room is limited each part is a row of its own, those that are begun first.</summary>
    public List<(ValueList<PartProgress> Parts, CoatRow Row)> Rows(IEnumerable<PartProgress> parts) =>
        [.. parts.OrderBy(part => !IsRoomy && part.Last is null)
            .GroupBy(part => (part.Last?.At, part.Last?.Product, part.Last?.Celsius, part.ToCome.ToValueList(), IsRoomy ? null : part.Part))
            .Select(alike => (alike.ToValueList(), Row(alike.First())))];

    /// <summary>The window after the last coat that is on; null when none is on, or when the sheet's times are not entered.</summary>
    public RecoatSpan? Since(PartProgress part) =>
        part.Last is { } last ? RecoatSpan.After(_question.Car.Calendar, Product(last.Product), last.At, last.Celsius) : null;

    public bool IsLate(PartProgress part) => Since(part)?.Closes < _question.From;

    /// <summary>Whether the air lets a product dry and the spray corner is not there then, or not until it is dry.</summary>
    public bool IsAway(string product) => May(product).Count == 0 && Airy(product).Count > 0;

    /// <summary>Why no day lets a product dry; null when some occasion does.</summary>
    public string? Damp(string product) => Airy(product).Count > 0 ? null
        : Occasions.Count == 0 ? "there is no spell until then"
        : $"no day lets it dry; the first: {CoatingDays.Against(_question.Car.Calendar, Occasions[0].At.Date, AirNeeds.Of(Product(product)))}";

    private CoatRow Row(PartProgress part) => new(part.ToCome
        .Select((coat, i) => new CoatToCome(coat.Product, i == 0 ? First(part, coat.Product) : May(coat.Product),
            i == 0 ? [] : After(part.ToCome.ElementAt(i - 1).Product))
        { TakesUntil = Takes(coat.Product) })
        .ToValueList())
    {
        Load = IsRoomy ? default : SprayRoom.Load(_question.Car, part.Part),
        TakenUntil = IsRoomy ? -1 : TakenUntil(part),
    };

    /// <summary>The last occasion at which it still dries from the coat that is on.</summary>
    private int TakenUntil(PartProgress part) =>
        part.Last is { } last ? Before(Corner.DryAt(Product(last.Product), last.At, last.Celsius) ?? last.At) : -1;

    private int Before(LocalDateTime time) => Occasions.Count(one => one.At < time) - 1;

    private ValueList<int> Takes(string product) => IsRoomy ? [] : _takes.TryGetValue(product, out var known) ? known
        : _takes[product] = Occasions.Select(
            (one, i) => Math.Max(i, Corner.DryAt(Product(product), one.At, null) is { } dry ? Before(dry) : i)).ToValueList();

    /// <summary>What is late is free again once it is abraded.</summary>
    private ValueList<int> First(PartProgress part, string product) => Since(part) is not { } span || IsLate(part) ? May(product)
        : May(product).Where(one => span.Has(Occasions[one].At)).ToValueList();

    private ValueList<int> May(string product) => _may.TryGetValue(product, out var known) ? known
        : _may[product] = Airy(product)
            .Where(one => Corner.Serves(Occasions[one].At, Corner.DryAt(Product(product), Occasions[one].At, null))).ToValueList();

    private ValueList<int> Airy(string product)
    {
        if (_airy.TryGetValue(product, out var known))
            return known;
        var needs = AirNeeds.Of(Product(product));
        return _airy[product] = Enumerable.Range(0, Occasions.Count)
            .Where(one => CoatingDays.Against(_question.Car.Calendar, Occasions[one].At.Date, needs) is null).ToValueList();
    }

    private ValueList<ValueList<int>> After(string product) => _after.TryGetValue(product, out var known) ? known
        : _after[product] = Occasions.Select(one => RecoatSpan.After(_question.Car.Calendar, Product(product), one.At, null))
            .Select(span => Enumerable.Range(0, Occasions.Count)
            .Where(later => span!.Has(Occasions[later].At)).ToValueList())
            .Select((may, one) => may.Where(later => later > one).ToValueList()).ToValueList();
}
