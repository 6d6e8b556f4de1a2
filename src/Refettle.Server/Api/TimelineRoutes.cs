using Microsoft.AspNetCore.Mvc;
using NodaTime;
using Refettle.Access;
using Refettle.Server.Guards;
using Refettle.Stuck;
using Refettle.Timeline;
using Refettle.Timeline.Scheduling;
using Refettle.Web.Garage;

namespace Refettle.Server.Api;

/// <summary>What timelines are made with.</summary>
/// <param name="Ladders">Without any no joint is taken to be stuck.</param>
internal sealed record TimelineTools(LadderSet Ladders, Func<IScheduler> Scheduler, TimeProvider Clock);

/// <summary>The timeline of a car as its log tells it.</summary>
internal static class TimelineRoutes
{
    private const long MostBytes = 200_000;
    private const double MostSeconds = 30;

    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("cars/{car}/timeline", AnswerAsync).WithMetadata(new BodyLimit(MostBytes));

    /// <summary>Whoever leaves ends the search.</summary>
    private static async Task<IResult> AnswerAsync(
        string car, HttpRequest request, Garage garage, TimelineTools tools, [FromServices] IAccessPlanner? planner, CancellationToken left)
    {
        if (planner is null)
            return Problems.Of(StatusCodes.Status503ServiceUnavailable, "This server has no planner", "Start it with the planner, or ask on the command line.");
        if (garage.Car(car) is not { } known)
            return Problems.NoSuchCar(car);
        var asked = await Body.ReadAsync<TimelineAsked>(request, left);
        if (!asked.IsGood)
            return Problems.Of(asked.Faults[0]);
        var made = await Task.Run(() => Made(known, asked.Value, tools, planner, left), left);
        return made.IsGood
            ? Results.Json(made.Value, ExchangeJson.Options)
            : Problems.Of(StatusCodes.Status422UnprocessableEntity, "There is no timeline for that", "See the faults.", made.Faults);
    }

    private static Result<TimelineShown> Made(Car car, TimelineAsked asked, TimelineTools tools, IAccessPlanner planner, CancellationToken cancel)
    {
        var work = TimelineWork.Of(car, asked.Goals, tools.Ladders, planner, cancel);
        if (!work.IsGood)
            return Result<TimelineShown>.Bad(work.Faults);
        if (work.Value.Network is not { } network)
            return Result<TimelineShown>.Bad(new Fault("goals", "no plan reaches them", "The plan page tells what is in the way."));
        var seconds = Math.Clamp(asked.Seconds, 0, MostSeconds);
        var answer = new TimelinePlanner(seconds > 0 ? tools.Scheduler() : new FirstScheduler())
            .Of(work.Value.Ask(Instant.FromDateTimeOffset(tools.Clock.GetUtcNow())), new(TimeSpan.FromSeconds(seconds)), null, cancel);
        return answer.IsGood ? Result<TimelineShown>.Good(new(work.Value.Plan, network, answer.Value)) : Result<TimelineShown>.Bad(answer.Faults);
    }
}
