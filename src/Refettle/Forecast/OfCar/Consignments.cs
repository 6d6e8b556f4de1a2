using MathNet.Numerics.Distributions;
using Refettle.Timeline.Network;

namespace Refettle.Forecast.OfCar;

/// <summary>How long a delivery or an outside shop takes: the promise, or what is named, times how late whoever gave it is. Of any wait the
/// owner can say himself what is the worst.</summary>
internal sealed class Consignments(CarForecastQuestion question)
{
    private const double MinutesOfADay = 24 * 60;

    /// <summary>What is overdue beyond this share of all promises is as late as they come.</summary>
    private const double MostPassed = 0.995;

    /// <summary>What the owner calls the worst is taken to be passed once in twenty times: the standard normal's quantile.</summary>
    private const double NineteenInTwenty = 1.6449;

    /// <summary>Null for waits that are no promise of anybody, of which the owner has not said the worst either.</summary>
    public Uncertainty? Of(WorkTask task)
    {
        if (IsOwnWord(task))
            return Own(task, (double)Math.Ceiling(task.Takes.Value), (double)task.AtWorst!.Value.Value);
        if (Usual(task) is not { } usual)
            return null;
        var known = question.Keeping.FirstOrDefault(one => IsOf(one, task));
        var lateness = known?.Lateness ?? usual;
        var named = task.Delivery is { } delivery ? (double)delivery.NamedDays * MinutesOfADay : (double)Math.Ceiling(task.Takes.Value);
        return task is { Delivery.On: not null, Mark: { } begun }
            ? new AnyCurve(Left(named * lateness.Factor, lateness.Sigma, -question.Projection.Clock.Minute(begun.At)))
            { Origin = known?.Origin ?? Origin.CommonPractice }
            : new Promise(named, lateness) { Origin = task.Origin };
    }

    /// <summary>Half take what he expects. A cure never takes less than is stated.</summary>
    private static Uncertainty Own(WorkTask task, double expected, double worst) => Usual(task) is null || expected == 0
        ? new ThreePoint(expected, expected, Math.Max(expected, worst)) { Origin = task.Origin }
        : new Promise(expected, new(1, Math.Log(Math.Max(1, worst / expected)) / NineteenInTwenty)) { Origin = task.Origin };

    private static bool IsOwnWord(WorkTask task) => task is { Delivery: null, AtWorst: not null };

    /// <summary>What is assumed, in words.</summary>
    public IEnumerable<string> Assumed
    {
        get
        {
            var own = question.Projection.Tasks.Any(IsOwnWord)
                ? new[] { "Waits of which you said the worst: half take what you expect, one in twenty longer than the worst; a cure never less than expected." }
                : [];
            var waits = question.Projection.Tasks.Where(task => Usual(task) is not null && !IsOwnWord(task)).ToList();
            var known = question.Keeping.Where(one => waits.Exists(task => IsOf(one, task))).ToList();
            return known.Select(one => $"{one.Says}.").Concat(own)
                .Concat(waits.TrueForAll(task => known.Exists(one => IsOf(one, task))) ? []
                : [$"{(known.Count == 0 ? "Deliveries" : "Other deliveries")}: half come {Lateness.OfDeliveries.Factor - 1:0%} late or earlier; outside shops: half take {Lateness.OfShops.Factor - 1:0%} longer than said or less (common practice, no source)."]);
        }
    }

    private static Lateness? Usual(WorkTask task) => task.Promised switch
    {
        Promiser.Supplier => Lateness.OfDeliveries,
        Promiser.Shop => Lateness.OfShops,
        _ => null,
    };

    private static bool IsOf(KnownLateness known, WorkTask task) =>
        task.Delivery?.From == known.Who && known.IsShop == (task.Promised == Promiser.Shop);

    /// <summary>The quantiles of what is left of a log-normal time, given that so much of it has passed.</summary>
    internal static Func<double, double> Left(double median, double sigma, double passed)
    {
        var over = passed <= 0 ? 0 : Math.Min(MostPassed, Normal.CDF(Math.Log(median), Math.Max(1e-6, sigma), Math.Log(passed)));
        return u => Math.Max(0, median * Math.Exp(sigma * Normal.InvCDF(0, 1, over + (u * (1 - over)))) - passed);
    }
}
