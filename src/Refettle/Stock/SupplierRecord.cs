using MathNet.Numerics.Distributions;
using Refettle.Forecast;

namespace Refettle.Stock;

/// <summary>How a supplier or shop keeps its promises, from the orders so far.</summary>
/// <param name="Name">The supplier's or shop's.</param>
/// <param name="Seen">Promises that are known to have been kept or broken.</param>
/// <param name="Belief">What is believed of the logarithm of (days it took / days promised).</param>
public sealed record SupplierRecord(string Name, int Seen, OverrunBelief Belief)
{
    /// <summary>Worth two orders, and wide: a first order tells little. Middle and spread as <see cref="Lateness.OfDeliveries"/>.</summary>
    private static OverrunBelief Before(Lateness usual) => new(Math.Log(usual.Factor), 2, 4, 3 * usual.Sigma * usual.Sigma);

    /// <summary>Whom it is like while nothing is known.</summary>
    public string Usual { get; init; } = "deliveries";

    public Origin Origin => Seen == 0 ? Origin.CommonPractice : Origin.Measured;

    /// <summary>In words, with how much it rests on.</summary>
    public string Says => Seen == 0
        ? $"{Name}: no promise seen yet; as {Usual} usually are (common practice, no source)"
        : $"{Name}: half take more than {Belief.MiddleFactor:0.0#} times what is promised ({Seen} seen)";

    /// <summary>The record of a supplier of parts. An order that is overdue counts as if it came today, which flatters it.</summary>
    public static SupplierRecord Of(Shelf shelf, string supplier, DateOnly today) => From(supplier, Lateness.OfDeliveries,
        from order in shelf.Orders
        where order.Supplier == supplier && order.FirstPromised is not null
        from line in order.Lines
        let last = line.ToCome == 0 && line.Arrivals.Count > 0
            ? line.Arrivals[line.Arrivals.Count - 1].On
            : line.ToCome > 0 && order.FirstPromised < today
            ? today
            : (DateOnly?)null
        where last is not null
        select (Promised: Days(order.On, order.FirstPromised!.Value), Took: Days(order.On, last.Value)));

    /// <summary>The record of an outside shop.</summary>
    public static SupplierRecord OfShop(Shelf shelf, string shop, DateOnly today)
    {
        var promises =
            from work in shelf.Outside
            where work.To == shop && work.Promised is not null
            let last = !work.IsAway
                ? work.Lines.SelectMany(line => line.Back).Max(back => back.On)
                : work.Promised < today
                ? today
                : (DateOnly?)null
            where last is not null
            select (Promised: Days(work.On, work.Promised!.Value), Took: Days(work.On, last.Value));
        return From(shop, Lateness.OfShops, promises) with { Usual = "outside shops" };
    }

    /// <summary>The factor on promised days that is not exceeded with this probability, above 0 and below
    /// 1: Student's t on the logarithm.</summary>
    public double Factor(double probability)
    {
        var spread = Math.Sqrt(Belief.Scale * (Belief.Weight + 1) / (Belief.Shape * Belief.Weight));
        return Math.Exp(Math.Clamp(StudentT.InvCDF(Belief.Mean, spread, 2 * Belief.Shape, probability), -3, 3));
    }

    /// <summary>For a forecast: the middle, and the spread that nine in ten agree with.</summary>
    public Lateness ForForecast() => new(Factor(0.5), Math.Log(Factor(0.9) / Factor(0.5)) / 1.2815515655446004);

    /// <summary>Everyone who sells or works for these cars, each as far as he is known.</summary>
    public static ValueList<KnownLateness> All(Shelf shelf, DateOnly today) =>
    [
        .. shelf.Orders.Select(order => order.Supplier).Concat(shelf.Lists.Select(list => list.Supplier)).Distinct()
            .Select(who => Of(shelf, who, today).Known(isShop: false)),
        .. shelf.Outside.Select(work => work.To).Distinct().Select(who => OfShop(shelf, who, today).Known(isShop: true)),
    ];

    private KnownLateness Known(bool isShop) => new(Name, isShop, ForForecast(), Seen, Says);

    private static SupplierRecord From(string name, Lateness usual, IEnumerable<(int Promised, int Took)> seen)
    {
        var all = seen.ToList();
        return new(name, all.Count, Before(usual).After(all.Select(one => ((double)one.Promised, (double)one.Took))));
    }

    /// <summary>A day at least: what is promised for the same day still takes one.</summary>
    private static int Days(DateOnly from, DateOnly to) => Math.Max(1, to.DayNumber - from.DayNumber);
}
