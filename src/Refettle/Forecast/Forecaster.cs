using Refettle.Forecast.Policy;
using Refettle.Forecast.Sampling;

namespace Refettle.Forecast;

/// <summary>Says when it will be finished, by playing many futures under one fixed policy.</summary>
/// <remarks>
/// Under the list policy a longer task can make a future finish earlier (it lets another into a gap first, as in R. L. Graham, Bounds on
/// multiprocessing timing anomalies, 1969). Where each resource suffices for all at once this cannot happen.
/// </remarks>
public static class Forecaster
{
    /// <summary>The finish of a future that the windows given do not suffice for.</summary>
    public const int NotFinished = int.MaxValue;

    private const int Checked = 3;

    /// <summary>All that is wrong with the question, or the answer to it.</summary>
    public static Result<ForecastAnswer> Of(ForecastQuestion question, CancellationToken cancel = default)
    {
        var faults = ForecastQuestionCheck.Of(question);
        return faults.Count > 0 ? Result<ForecastAnswer>.Bad(faults) : Result<ForecastAnswer>.Good(Answer(question, cancel));
    }

    /// <summary>When each future is finished, by its number; <see cref="NotFinished"/> when the windows given do not suffice.</summary>
    public static Result<int[]> Finishes(ForecastQuestion question, CancellationToken cancel = default)
    {
        var faults = ForecastQuestionCheck.Of(question);
        if (faults.Count > 0)
            return Result<int[]>.Bad(faults);
        var finishes = new Simulation(question, new()).Run(cancel).Finishes;
        return Result<int[]>.Good(Array.ConvertAll(finishes, finish => finish >= OpenTimes.Never ? NotFinished : finish));
    }

    private static ForecastAnswer Answer(ForecastQuestion question, CancellationToken cancel)
    {
        var tables = new TableShelf();
        var simulation = new Simulation(question, tables);
        Check(question, simulation);
        var tally = simulation.Run(cancel);
        var finishes = new Finishes(tally.Finishes);
        var deciding = Shares(question, simulation.Course, tally.Counts.Deciding);
        return new()
        {
            Futures = question.Futures,
            Seed = question.Seed,
            Half = finishes.Quantile(0.5),
            FourInFive = finishes.Quantile(0.8),
            NineteenInTwenty = finishes.Quantile(0.95),
            Date = question.Date,
            ChanceOfDate = question.Date is { } date ? finishes.Chance(date) : null,
            Unfinished = finishes.Unfinished,
            Stranded = Shares(question, simulation.Course, tally.Counts.Stranded),
            Deciding = deciding,
            Helps = new WhatHelps(question, tables, cancel).Of(deciding),
            OrderBy = LatestStarts.Of(question, tables, cancel),
            TooLate = TooLateOf(question, tally),
            Curve = finishes.Curve(),
        };
    }

    private static void Check(ForecastQuestion question, Simulation simulation)
    {
        for (var future = 0; future < Math.Min(Checked, question.Futures); future++)
        {
            if (FutureCheck.Of(question.Project, simulation.Play(future)) is [var wrong, ..])
                throw new InvalidOperationException($"Future {future} could not happen: {wrong}.");
        }
    }

    private static ValueList<Deciding> Shares(ForecastQuestion question, Course course, long[] counts) =>
        Enumerable.Range(0, course.Count).Where(i => counts[i] > 0)
            .Select(i => new Deciding(course.Place[i], question.Project.Activities[course.Place[i]].Id,
                Estimate.OfChance(counts[i], question.Futures)))
            .OrderByDescending(one => one.Share.Value).ThenBy(one => one.Place).ToValueList();

    private static ValueList<WindowMissed> TooLateOf(ForecastQuestion question, Tally tally) =>
        question.Project.Lags.Select((lag, place) => (lag, misses: tally.Counts.TooLate[place])).Where(pair => pair.misses > 0)
            .OrderByDescending(pair => pair.misses)
            .Select(pair => new WindowMissed(
                question.Project.Activities[pair.lag.Before].Id, question.Project.Activities[pair.lag.After].Id,
                Estimate.OfChance(pair.misses, question.Futures)))
            .ToValueList();
}
