using Refettle.Logbook;

namespace Refettle.Stock;

/// <summary>Orders and outside work, put together from their entries.</summary>
internal sealed class OrderBook
{
    private readonly Dictionary<Guid, Order> _orders = [];
    private readonly Dictionary<Guid, OutsideWork> _outside = [];
    private readonly List<Fault> _faults = [];

    /// <param name="lines">Entries of all cars in a fixed order, those of one car in the order of its log.</param>
    public OrderBook(IReadOnlyCollection<StockLine> lines)
    {
        foreach (var (car, entry, happening) in lines)
            Begin(car, entry, happening);
        foreach (var (_, _, happening) in lines)
            Add(happening);
    }

    public ValueList<Order> Orders => _orders.Values.OrderBy(order => order.On).ThenBy(order => order.Id).ToValueList();

    public ValueList<OutsideWork> Outside => _outside.Values.OrderBy(work => work.On).ThenBy(work => work.Id).ToValueList();

    public IEnumerable<Fault> Faults => _faults;

    public string? SupplierOf(Guid order) => _orders.GetValueOrDefault(order)?.Supplier;

    /// <summary>The pieces that went from the shelf for a line of outside work.</summary>
    public Batch? SentFrom(Guid sent, string what) =>
        _outside.GetValueOrDefault(sent)?.Lines.FirstOrDefault(line => line.Item.What == what)?.Item.Batch;

    private void Begin(string car, Guid entry, StockHappening happening)
    {
        if (happening is Ordered ordered)
            _orders[entry] =
                new(entry, car, ordered.Supplier, ordered.On, ordered.Promised, ordered.Promised, ordered.ReturnDays, ordered.Carriage,
                ordered.Lines.Select(line => new OrderedLine(line, [], 0, 0)).ToValueList());
        else if (happening is SentOut sent)
            _outside[entry] = new(entry, car, sent.To, sent.Work, sent.On, sent.Promised, sent.Price,
                sent.Items.Select(item => new OutsideLine(item, [])).ToValueList());
    }

    private void Add(StockHappening happening)
    {
        switch (happening)
        {
            case OrderPromised promised:
                Change(promised.Order, "a new promise", order => order with { Promised = promised.Promised });
                break;
            case OrderCancelled cancelled:
                foreach (var (number, count) in cancelled.Lines)
                    Change(cancelled.Order, "a cancellation", number, line => line with { Cancelled = line.Cancelled + count });
                break;
            case Arrived arrived:
                foreach (var came in arrived.Lines)
                    Change(arrived.Order, "an arrival", came.Ordered,
                        line => line with { Arrivals = With(line.Arrivals, new(arrived.On, came.Batch.Number, came.Count)) });
                break;
            case SentBack back:
                foreach (var gone in back.Lines)
                    Change(back.Order, "a return", gone.Ordered, line => line with { SentBack = line.SentBack + gone.Count });
                break;
            case CameBack back:
                ComeBack(back);
                break;
        }
    }

    private void ComeBack(CameBack back)
    {
        if (!_outside.TryGetValue(back.Sent, out var work))
        {
            _faults.Add(new("outside work",
                $"something came back on {back.On:yyyy-MM-dd} that was never sent out, or whose sending is struck",
                "Strike the return, or restore the sending."));
            return;
        }

        foreach (var item in back.Items.Where(item => work.Lines.All(line => line.Item.What != item.What)))
            _faults.Add(new($"outside work at {work.To}", $"{item.What} came back and is not on the list of what left",
                "Strike the entry and name it as it was sent."));
        _outside[back.Sent] = work with
        {
            Lines = work.Lines
                .Select(line => line with
                {
                    Back = [.. line.Back,
                        .. back.Items.Where(item => item.What == line.Item.What).Select(item => new ComeBack(back.On, item))]
                })
                        .ToValueList(),
        };
    }

    private void Change(Guid id, string what, string number, Func<OrderedLine, OrderedLine> change) => Change(id, what, order =>
    {
        if (order.Lines.All(line => line.Line.Number != number))
            _faults.Add(new($"order at {order.Supplier} of {order.On:yyyy-MM-dd}", $"{what} of {number}, which was not ordered there",
                "Strike the entry and name the number as it was ordered."));
        return order with { Lines = order.Lines.Select(line => line.Line.Number == number ? change(line) : line).ToValueList() };
    });

    private void Change(Guid id, string what, Func<Order, Order> change)
    {
        if (_orders.TryGetValue(id, out var order))
            _orders[id] = change(order);
        else
            _faults.Add(new("order", $"{what} for an order that is not here, or is struck",
                "The pieces count nevertheless; strike the entry if they never came."));
    }

    private static ValueList<Arrival> With(ValueList<Arrival> arrivals, Arrival arrival) =>
        arrivals.Append(arrival).OrderBy(one => one.On).ToValueList();
}

/// <summary>An entry about stock, with the car whose log it is in.</summary>
internal readonly record struct StockLine(string Car, Guid Entry, StockHappening Happening);
