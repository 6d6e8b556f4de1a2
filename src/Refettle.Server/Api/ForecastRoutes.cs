using Microsoft.AspNetCore.Mvc;
using Refettle.Access;
using Refettle.Forecast.OfCar;
using Refettle.Stock.Baskets;
using Refettle.Timeline.Scheduling;
using Refettle.Web.Garage;

namespace Refettle.Server.Api;

/// <summary>The forecast of a car as its log tells it.</summary>
internal static class ForecastRoutes
{
    public static void Map(IEndpointRouteBuilder api) => api.MapPost("cars/{car}/forecast", (
            string car, HttpRequest request, Garage garage, TimelineTools tools, [FromServices] IAccessPlanner? planner,
            CancellationToken left) =>
            QuestionRoutes.MadeAsync<ForecastAsked, ShownForecast>(car, request, garage, planner, "There is no forecast for that",
                (planning, history, asked) => Made(TimelineRoutes.Supplied(garage, history, asked.Goals, tools, planning, left),
                    asked.Confidence, left), left))
        .WithMetadata(new BodyLimit(QuestionRoutes.MostBytes));

    private static Result<ShownForecast> Made(Result<SuppliedWork> supplied, double confidence, CancellationToken cancel)
    {
        var question = supplied.IsGood
            ? supplied.Value.Forecast(new FirstScheduler(), TimeSpan.FromSeconds(1), cancel)
            : Result<CarForecastQuestion>.Bad(supplied.Faults);
        var made = question.IsGood
            ? CarForecast.Of(question.Value with { Confidence = confidence }, cancel)
            : Result<CarForecast>.Bad(question.Faults);
        return made.IsGood ? Result<ShownForecast>.Good(ShownForecast.Of(made.Value)) : Result<ShownForecast>.Bad(made.Faults);
    }
}
