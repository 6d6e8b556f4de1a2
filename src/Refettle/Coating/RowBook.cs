using NodaTime;
using Refettle.Coating.Sessions;
using Refettle.Timeline.Spells;

namespace Refettle.Coating;

/// <summary>Turns parts, windows and weather into a question of sessions; parts that are alike become one row.</summary>
internal sealed class RowBook(CoatingQuestion question)
{
    private readonly Dictionary<string, ValueList<int>> _may = [];
    private readonly Dictionary<string, ValueList<ValueList<int>>> _after = [];

    public ValueList<Occasion> Occasions { get; } = Occasion.Of(question.Car.Calendar, question.From, question.Days);

    public CoatingProduct Product(string id) => question.Car.Coating.Product(id)!;

    public SessionRoom Room { get; } = SprayRoom.Of(question.Car.Calendar);

    /// <summary>The rows, each with its parts; where room is limited each part is a row of its own, those that are begun first.</summary>
    public List<(ValueList<PartProgress> Parts, CoatRow Row)> Rows(IEnumerable<PartProgress> parts) =>
        [.. parts.OrderBy(part => !Room.IsEndless && part.Last is null)
            .GroupBy(part => (part.Last?.At, part.Last?.Product, part.Last?.Celsius, part.ToCome.ToValueList(), Room.IsEndless ? null : part.Part))
            .Select(alike => (alike.ToValueList(), Row(alike.First())))];

    /// <summary>The window after the last coat that is on; null when none is on, or when the sheet's times are not entered.</summary>
    public RecoatSpan? Since(PartProgress part) =>
        part.Last is { } last ? RecoatSpan.After(question.Car.Calendar, Product(last.Product), last.At, last.Celsius) : null;

    public bool IsLate(PartProgress part) => Since(part)?.Closes < question.From;

    /// <summary>Why no day lets a product dry; null when some occasion does.</summary>
    public string? Damp(string product) => May(product).Count > 0 ? null
        : Occasions.Count == 0 ? "there is no spell until then"
        : $"no day lets it dry; the first: {CoatingDays.Against(question.Car.Calendar, Occasions[0].At.Date, AirNeeds.Of(Product(product)))}";

    private CoatRow Row(PartProgress part) => new(part.ToCome
        .Select((coat, i) => new CoatToCome(coat.Product, i == 0 ? First(part, coat.Product) : May(coat.Product), i == 0 ? [] : After(part.ToCome.ElementAt(i - 1).Product)))
        .ToValueList())
    {
        Load = Room.IsEndless ? default : SprayRoom.Load(question.Car, part.Part),
    };

    /// <summary>What is late is free again once it is abraded.</summary>
    private ValueList<int> First(PartProgress part, string product) => Since(part) is not { } span || IsLate(part) ? May(product)
        : May(product).Where(one => span.Has(Occasions[one].At)).ToValueList();

    private ValueList<int> May(string product)
    {
        if (_may.TryGetValue(product, out var known))
            return known;
        var needs = AirNeeds.Of(Product(product));
        return _may[product] = Enumerable.Range(0, Occasions.Count).Where(one => CoatingDays.Against(question.Car.Calendar, Occasions[one].At.Date, needs) is null).ToValueList();
    }

    private ValueList<ValueList<int>> After(string product) => _after.TryGetValue(product, out var known) ? known
        : _after[product] = Occasions.Select(one => RecoatSpan.After(question.Car.Calendar, Product(product), one.At, null)).Select(span => Enumerable.Range(0, Occasions.Count)
            .Where(later => span!.Has(Occasions[later].At)).ToValueList()).Select((may, one) => may.Where(later => later > one).ToValueList()).ToValueList();
}
