using Refettle.Forecast.Policy;
using Refettle.Forecast.Sampling;

namespace Refettle.Forecast;

/// <summary>By when orders and outside work have to be started, so that with the question's confidence they hold nothing up.</summary>
/// <remarks>In each future: when what waits for it would have started had it been there from the begin, less how long it takes.</remarks>
internal static class LatestStarts
{
    private const int MostFutures = 4000;

    public static ValueList<LatestStart> Of(ForecastQuestion question, TableShelf tables, CancellationToken cancel)
    {
        var some = question with { Futures = Math.Min(question.Futures, MostFutures) };
        var durations = new Simulation(some, tables);
        return Enumerable.Range(0, question.Uncertainties.Count).Where(place => question.Uncertainties[place] is Promise)
            .Select(place => Of(some, tables, place, durations.Durations(place), cancel)).OfType<LatestStart>()
            .OrderBy(latest => latest.Latest ?? -1).ThenBy(latest => latest.ChanceAtOnce.Value).ToValueList();
    }

    /// <returns>Null when nothing waits for it.</returns>
    private static LatestStart? Of(ForecastQuestion question, TableShelf tables, int place, int[] takes, CancellationToken cancel)
    {
        var there = question with
        { Uncertainties = question.Uncertainties.Select((was, other) => other == place ? new Eased(was, 0, 0) : was).ToValueList() };
        var needed = new Simulation(there, tables, place).Run(cancel).NeededBy[0];
        if (needed.All(time => time >= OpenTimes.Never))
            return null;
        var latest = needed.Zip(takes, (need, take) => need - take).Order().ToArray();
        var last = latest[Math.Min((int)Math.Floor((1 - question.Confidence) * latest.Length), latest.Length - 1)];
        var earliest = question.Project.Activities[place].Earliest;
        return new(place, question.Project.Activities[place].Id, last < earliest ? null : last,
            Estimate.OfChance(latest.Count(time => time >= earliest), latest.Length));
    }
}
