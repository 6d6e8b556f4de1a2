using Refettle.Access;
using Refettle.Logbook;
using Refettle.Stock;
using Refettle.Stock.Baskets;
using Refettle.Web.Garage;
using Refettle.Web.Words;

namespace Refettle.Web.Stores;

/// <summary>What the page of the basket shows: the plans of all cars against the one shelf.</summary>
public sealed class BasketRoom
{
    private readonly Refettle.Stock.Shelf _shelf;
    private readonly DateOnly _today;
    private readonly Dictionary<string, string> _names;

    /// <param name="timeline">Of one of the cars, where there is one: its needs are for the days of their steps.</param>
    public BasketRoom(
        Refettle.Stock.Shelf shelf, ValueList<(CarHistory History, Plan? Plan)> plans, DateOnly today,
        (string Car, TimelineShown Shown)? timeline = null)
    {
        (_shelf, _today) = (shelf, today);
        var cars = plans.Select(one => timeline is { } known && known.Car == one.History.Car.Id
            ? new(one.History, new(one.History.Car, known.Shown.Plan, known.Shown.Network), [])
            : PlannedCar.Of(one.History, one.Plan)).ToValueList();
        Basket = ShelfPlanner.Fill(shelf, cars,
            place => cars[place].Work.Network is null ? null : StepDays.Of(timeline!.Value.Shown.Answer.Tasks), today);
        TrialFits = Refettle.Stock.Baskets.TrialFits.Of(shelf, plans.Select(one => one.History.Car), today);
        var wants = plans.SelectMany(one => one.History.Car.Wants.Select(want => (one.History.Car.Id, want.Thing))).ToHashSet();
        Asked = Basket.Lines.Select(line => line.Need).Concat(Basket.Unnumbered)
            .Where(need => need.Reason == NeedReason.Asked && wants.Contains((need.Car, need.Thing))).ToValueList();
        _names = plans.ToDictionary(one => one.History.Car.Id, one => one.History.Car.Name);
        Planned = cars.Where(one => one.Work.Plan.Steps.Count > 0).Select(one => one.History.Car.Name).ToValueList();
    }

    public Basket Basket { get; }

    /// <summary>What was asked for by word, while nothing else needs as many there.</summary>
    public ValueList<Need> Asked { get; }

    public ValueList<TrialFit> TrialFits { get; }

    /// <summary>The cars whose plans are in the basket.</summary>
    public ValueList<string> Planned { get; }

    /// <summary>The entry that one tap on a purchase writes; the days that the supplier names are his promise.</summary>
    /// <param name="supplier">Who it was ordered of, where no list names one.</param>
    public Ordered Order(Purchase purchase, string supplier)
    {
        var offer = _shelf.Lists.Where(list => list.Supplier == purchase.Supplier).SelectMany(list => list.Offers)
            .FirstOrDefault(one => one.Number == purchase.Number);
        return new(purchase.Supplier ?? supplier.Trim(), [new(purchase.Number, purchase.Count, offer?.Each)], _today,
            offer?.LeadDays is { } days ? _today.AddDays(days) : null, null, null);
    }

    /// <summary>What a need is for, with its car where there are several.</summary>
    public string Place(Need need) => _names.Count > 1 ? $"{need.What}, {_names[need.Car]}" : need.What;

    /// <summary>What a purchase is for, each place once.</summary>
    public IEnumerable<string> Places(Purchase purchase) => purchase.For.Select(place =>
        Basket.Lines.FirstOrDefault(line => $"{line.Need.Car} {line.Need.Thing}" == place) is { } line
            ? Place(line.Need)
            : place).Distinct();

    /// <summary>How a line stands, in words.</summary>
    public static string Standing(Served line)
    {
        var given = line.Given
            .Select(one => $"{one.Count} {Where(one)}{(one.Supply.Number == line.Need.Number ? "" : $" as {one.Supply.Number}")}{(one.Caveat.Length > 0 ? $" ({one.Caveat})" : "")}");
        return string.Join(", ", line.Missing > 0 ? given.Append($"{line.Missing} missing") : given);
    }

    /// <summary>The day to order by, in words.</summary>
    public static string OrderBy(Purchase purchase) => purchase switch
    {
        { OrderBy: null } => "no date to meet is known",
        { DaysTooLate: > 0 } => $"should have been ordered {Plain.Days(purchase.DaysTooLate)} ago",
        { OrderBy: { } day } => $"order by {DayWords.Day(day)}",
    };

    private static string Where(Given given) => (given.Supply.Order, given.Supply.Kit) switch
    {
        ({ }, _) => $"to come about {DayWords.Day(given.Supply.From)}{(given.DaysLate > 0 ? $", {Plain.Days(given.DaysLate)} late" : "")}",
        (_, { } kit) => $"in kit {kit}, to be opened",
        _ => "in hand",
    };
}
