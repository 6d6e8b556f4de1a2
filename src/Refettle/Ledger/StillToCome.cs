using Refettle.Forecast;
using Refettle.Timeline;

namespace Refettle.Ledger;

/// <summary>Hours and money that are still to come, and what the overrun so far makes of them.</summary>
/// <param name="PlannedWork">By plan: opening, closing, and the own work of chosen jobs that are not done.</param>
/// <param name="WorkHalf">In half of all futures it takes no more.</param>
/// <param name="WorkFourInFive">In four of five.</param>
/// <param name="PlannedMoney">By plan: what is owed, and what chosen jobs were to cost beyond what is spent and owed for them.</param>
/// <param name="Pace">What this user's timed work says about his hours.</param>
/// <param name="Price">What the jobs that are done say about money.</param>
public sealed record StillToCome(
    Minutes PlannedWork, Minutes WorkHalf, Minutes WorkFourInFive, decimal PlannedMoney, decimal MoneyHalf, decimal MoneyFourInFive,
    OverrunBelief Pace, OverrunBelief Price)
{
    // Money is sampled in tenths, so that small sums are not rounded away.
    private const int Tenths = 10;

    /// <param name="steps">Minutes of the steps to open and to close that the chosen jobs still need, each by itself.</param>
    /// <param name="seed">The same seed, the same answer.</param>
    /// <param name="futures">How many are sampled.</param>
    public static StillToCome Of(
        Car car, Books books, IEnumerable<Minutes> steps, ulong seed, int futures = ForecastQuestion.DefaultFutures)
    {
        var ahead = car.Jobs.Where(job => BooksFold.IsChosen(car, job) && !car.JobsDone.Contains(job.Id)).ToList();
        var sums = books.Jobs.Where(sum => sum.Job is not null).ToDictionary(sum => sum.Job!);
        var work = steps.Concat(ahead.Select(job => job.Work)).Where(minutes => minutes > Minutes.Zero)
            .Select(minutes => (double)minutes.Value).ToList();
        var money = ahead.Select(job => Math.Max(0, job.Parts.Amount - sums[job.Id].Spent - sums[job.Id].Owed)).Where(rest => rest > 0)
            .ToList();
        var pace = TimedWork.Learn(books.Work);
        var price = OverrunBelief.Start
            .After(books.Jobs.Where(sum => sum.IsDone).Select(sum => ((double)sum.PlannedMoney, (double)(sum.Spent + sum.Owed))));
        var (workHalf, workFourInFive) = Sum(work, pace, seed, futures);
        var (moneyHalf, moneyFourInFive) = Sum([.. money.Select(rest => (double)rest * Tenths)], price, seed, futures);
        return new(
            new((decimal)work.Sum()), new(workHalf), new(workFourInFive),
            books.Owed + money.Sum(), books.Owed + (decimal)moneyHalf / Tenths, books.Owed + (decimal)moneyFourInFive / Tenths, pace,
            price);
    }

    /// <summary>The sum of pieces that overrun together, as a row of activities one after the other.</summary>
    private static (int Half, int FourInFive) Sum(List<double> pieces, OverrunBelief overrun, ulong seed, int futures)
    {
        if (pieces.Count == 0)
            return (0, 0);
        var project = new Project(
            pieces.Select((piece, i) => new Activity($"piece {i}", (int)Math.Round(piece), [])).ToValueList(), [],
            Enumerable.Range(1, pieces.Count - 1).Select(i => new Lag(i - 1, i)).ToValueList());
        var finishes = new Finishes(Forecaster.Finishes(new()
        {
            Project = project,
            Uncertainties = pieces.Select(piece => (Uncertainty)new OwnPace(piece)).ToValueList(),
            Order = Enumerable.Range(0, pieces.Count).ToValueList(),
            Overrun = overrun,
            Futures = futures,
            Seed = seed,
        }).Value);
        return (finishes.Quantile(0.5).Time ?? 0, finishes.Quantile(0.8).Time ?? 0);
    }
}
