using System.Security.Cryptography;
using NodaTime;
using NodaTime.Extensions;
using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Forecast;
using Refettle.Forecast.OfCar;
using Refettle.Logbook;
using Refettle.Sheets;
using Refettle.Storage;
using Refettle.Timeline;
using Refettle.Timeline.Scheduling;

namespace Refettle.Bench.Forecasts;

/// <summary>The project of a car as its log tells it.</summary>
internal static class CarProject
{
    /// <param name="store">A file with logs, as <c>refettle demo --store FILE</c> makes it.</param>
    /// <param name="part">What is to come free, beside the chosen jobs.</param>
    /// <param name="content">The folder that holds <c>ladders</c>.</param>
    public static ForecastQuestion Ask(string store, string car, string part, string content, int futures)
    {
        using var logs = LogbookStore.Open(store, TimeProvider.System, RandomNumberGenerator.Create()).Value;
        var history = CarHistory.Of(car, logs.Read(car).Select(kept => kept.Entry));
        var ladders = LadderReader.Load(Path.Combine(content, "ladders")).Value;
        var work = TimelineWork.Of(history.Car, [Fact.Free(part)], ladders, new AccessPlanner(new ReducedSolver()), default).Value;
        var projection = Projection.Of(history.Car, work.Network!, TimeProvider.System.GetCurrentInstant()).Value;
        var question = new CarFutures(new()
        {
            Car = history.Car,
            Network = work.Network!,
            Projection = projection,
            Schedule = new FirstScheduler().Solve(new(projection.Project), new(TimeSpan.Zero), null, default).Schedule,
            Ladders = ladders,
            Futures = futures,
        }).Question().Value;
        return question with { Date = Forecaster.Finishes(question with { Futures = 1000 }).Value.Order().ElementAt(600) };
    }
}
