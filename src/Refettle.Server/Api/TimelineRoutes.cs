using Microsoft.AspNetCore.Mvc;
using NodaTime;
using Refettle.Access;
using Refettle.Logbook;
using Refettle.Stock.Baskets;
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
    private const double MostSeconds = 30;

    public static void Map(IEndpointRouteBuilder api) => api.MapPost("cars/{car}/timeline", (
            string car, HttpRequest request, Garage garage, TimelineTools tools, [FromServices] IAccessPlanner? planner, CancellationToken left) =>
            QuestionRoutes.MadeAsync<TimelineAsked, TimelineShown>(car, request, garage, planner, "There is no timeline for that",
                (planning, history, asked) => Made(garage.Histories(), history.Car, asked, tools, planning, left), left))
        .WithMetadata(new BodyLimit(QuestionRoutes.MostBytes));

    private static Result<TimelineShown> Made(IReadOnlyCollection<CarHistory> all, Car car, TimelineAsked asked, TimelineTools tools, IAccessPlanner planner, CancellationToken cancel)
    {
        var work = TimelineWork.Of(car, asked.Goals, tools.Ladders, planner, cancel);
        if (!work.IsGood)
            return Result<TimelineShown>.Bad(work.Faults);
        var now = Instant.FromDateTimeOffset(tools.Clock.GetUtcNow());
        var supplied = ShelfPlanner.Supplied(work.Value, all, planner, now, DateOnly.FromDateTime(tools.Clock.GetLocalNow().DateTime), cancel);
        var tasks = supplied.Tasks();
        if (!tasks.IsGood)
            return Result<TimelineShown>.Bad(tasks.Faults);
        var seconds = Math.Clamp(asked.Seconds, 0, MostSeconds);
        var answer = new TimelinePlanner(seconds > 0 ? tools.Scheduler() : new FirstScheduler())
            .Of(supplied.Ask(now), new(TimeSpan.FromSeconds(seconds)), null, cancel);
        return answer.IsGood ? Result<TimelineShown>.Good(new(supplied.Plan, tasks.Value, answer.Value)) : Result<TimelineShown>.Bad(answer.Faults);
    }
}
