using Microsoft.AspNetCore.Mvc;
using NodaTime;
using Refettle.Access;
using Refettle.Forecast;
using Refettle.Forecast.OfCar;
using Refettle.Logbook;
using Refettle.Stock;
using Refettle.Stock.Baskets;
using Refettle.Timeline;
using Refettle.Timeline.Scheduling;
using Refettle.Web.Garage;

namespace Refettle.Server.Api;

/// <summary>The forecast of a car as its log tells it.</summary>
internal static class ForecastRoutes
{
    public static void Map(IEndpointRouteBuilder api) => api.MapPost("cars/{car}/forecast", (
            string car, HttpRequest request, Garage garage, TimelineTools tools, [FromServices] IAccessPlanner? planner, CancellationToken left) =>
            QuestionRoutes.MadeAsync<ForecastAsked, ShownForecast>(car, request, garage, planner, "There is no forecast for that",
                (planning, history, asked) => Shown(Made(garage.Histories(), history, asked, tools, planning, left)), left))
        .WithMetadata(new BodyLimit(QuestionRoutes.MostBytes));

    private static Result<ShownForecast> Shown(Result<CarForecast> made) =>
        made.IsGood ? Result<ShownForecast>.Good(ShownForecast.Of(made.Value)) : Result<ShownForecast>.Bad(made.Faults);

    private static Result<CarForecast> Made(IReadOnlyCollection<CarHistory> all, CarHistory history, ForecastAsked asked, TimelineTools tools, IAccessPlanner planner, CancellationToken cancel)
    {
        var work = TimelineWork.Of(history.Car, asked.Goals, tools.Ladders, planner, cancel);
        if (!work.IsGood)
            return Result<CarForecast>.Bad(work.Faults);
        var (now, today) = (Instant.FromDateTimeOffset(tools.Clock.GetUtcNow()), DateOnly.FromDateTime(tools.Clock.GetLocalNow().DateTime));
        var tasks = ShelfPlanner.Supplied(work.Value, all, planner, now, today, cancel).Tasks();
        if (!tasks.IsGood)
            return Result<CarForecast>.Bad(tasks.Faults);
        var projection = Projection.Of(history.Car, tasks.Value, now);
        return !projection.IsGood ? Result<CarForecast>.Bad(projection.Faults) : CarForecast.Of(new()
        {
            Car = history.Car,
            Network = tasks.Value,
            Projection = projection.Value,
            Schedule = new FirstScheduler().Solve(new(projection.Value.Project), new(TimeSpan.FromSeconds(1)), null, cancel).Schedule,
            Ladders = tools.Ladders,
            Overrun = TimedWork.Learn(TimedWork.Of(history)),
            Keeping = SupplierRecord.All(ShelfFold.Of(all), today),
            Confidence = asked.Confidence,
        }, cancel);
    }
}
