using Refettle.Logbook;
using Refettle.Stock;
using Refettle.Web.Words;

namespace Refettle.Web.Stores;

/// <summary>What the page of orders and outside work shows.</summary>
public sealed class OrdersRoom(Refettle.Stock.Shelf shelf, DateOnly today)
{
    /// <summary>Orders of which something is to come; the one promised first at the front.</summary>
    public ValueList<Order> ToCome { get; } = shelf.Orders.Where(order => order.IsOpen)
        .OrderBy(order => order.Promised ?? DateOnly.MaxValue).ToValueList();

    /// <summary>What is away, the longest first.</summary>
    public ValueList<OutsideWork> Away { get; } = shelf.Outside.Where(work => work.IsAway).OrderBy(work => work.On).ToValueList();

    /// <summary>How the promise of an order stands, in words.</summary>
    public string Promise(Order order) => Promise(order.Promised);

    public string Promise(OutsideWork work) => $"away {Plain.Days(today.DayNumber - work.On.DayNumber)}, {Promise(work.Promised)}";

    /// <summary>How that supplier or shop has kept his promises so far.</summary>
    public string Record(Order order) => SupplierRecord.Of(shelf, order.Supplier, today).Says;

    public string Record(OutsideWork work) => SupplierRecord.OfShop(shelf, work.To, today).Says;

    /// <summary>One line of an order came, all of it that was to come.</summary>
    public Result<ValueList<Happening>> Came(Order order, OrderedLine line) =>
        Alone(OrderWork.Arrived(shelf, order, [new(line.Line.Number, line.ToCome)], today, null, null));

    public Result<ValueList<Happening>> AllCame(Order order) => Alone(OrderWork.Arrived(shelf, order, [], today, null, null));

    /// <summary>Some of a line is back and was looked at.</summary>
    public Result<ValueList<Happening>> Back(OutsideWork work, OutsideLine line, int count, string found, bool good) =>
        string.IsNullOrWhiteSpace(found)
        ? Result<ValueList<Happening>>.Bad(
            new Fault($"check of {line.Item.What}", "nothing is said of it", "Say what you found: count, function, defects."))
        : Alone(OrderWork.CameBack(work, [new(line.Item.What, count)], found.Trim(), good, PieceCondition.Refurbished, today));

    private string Promise(DateOnly? promised) => promised is not { } day ? "no day promised"
        : day < today
        ? $"promised for {DayWords.Day(day)}, {Plain.Days(today.DayNumber - day.DayNumber)} late"
        : $"promised for {DayWords.Day(day)}";

    private static Result<ValueList<Happening>> Alone(Result<Happening> one) =>
        one.IsGood ? Result<ValueList<Happening>>.Good([one.Value]) : Result<ValueList<Happening>>.Bad(one.Faults);
}
