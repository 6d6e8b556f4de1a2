using Microsoft.AspNetCore.Mvc;
using NodaTime;
using Refettle.Access;
using Refettle.Forecast;
using Refettle.Forecast.OfCar;
using Refettle.Server.Guards;
using Refettle.Timeline;
using Refettle.Timeline.Scheduling;
using Refettle.Web.Garage;

namespace Refettle.Server.Api;

/// <summary>The forecast of a car as its log tells it.</summary>
internal static class ForecastRoutes
{
    private const long MostBytes = 200_000;

    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("cars/{car}/forecast", AnswerAsync).WithMetadata(new BodyLimit(MostBytes));

    /// <summary>Whoever leaves ends the sampling.</summary>
    private static async Task<IResult> AnswerAsync(
        string car, HttpRequest request, Garage garage, TimelineTools tools, [FromServices] IAccessPlanner? planner, CancellationToken left)
    {
        if (planner is null)
            return Problems.Of(StatusCodes.Status503ServiceUnavailable, "This server has no planner", "Start it with the planner, or ask on the command line.");
        if (garage.History(car) is not { } history)
            return Problems.NoSuchCar(car);
        var asked = await Body.ReadAsync<ForecastAsked>(request, left);
        if (!asked.IsGood)
            return Problems.Of(asked.Faults[0]);
        var made = await Task.Run(() => Made(history, asked.Value, tools, planner, left), left);
        return made.IsGood
            ? Results.Json(ShownForecast.Of(made.Value), ExchangeJson.Options)
            : Problems.Of(StatusCodes.Status422UnprocessableEntity, "There is no forecast for that", "See the faults.", made.Faults);
    }

    private static Result<CarForecast> Made(Logbook.CarHistory history, ForecastAsked asked, TimelineTools tools, IAccessPlanner planner, CancellationToken cancel)
    {
        var work = TimelineWork.Of(history.Car, asked.Goals, tools.Ladders, planner, cancel);
        if (!work.IsGood)
            return Result<CarForecast>.Bad(work.Faults);
        if (work.Value.Network is not { } network)
            return Result<CarForecast>.Bad(new Fault("goals", "no plan reaches them", "The plan page tells what is in the way."));
        var projection = Projection.Of(history.Car, network, Instant.FromDateTimeOffset(tools.Clock.GetUtcNow()));
        return !projection.IsGood ? Result<CarForecast>.Bad(projection.Faults) : CarForecast.Of(new()
        {
            Car = history.Car,
            Network = network,
            Projection = projection.Value,
            Schedule = new FirstScheduler().Solve(new(projection.Value.Project), new(TimeSpan.FromSeconds(1)), null, cancel).Schedule,
            Ladders = tools.Ladders,
            Overrun = TimedWork.Learn(TimedWork.Of(history)),
            Confidence = asked.Confidence,
        }, cancel);
    }
}
