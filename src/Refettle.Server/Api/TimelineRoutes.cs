using Microsoft.AspNetCore.Mvc;
using NodaTime;
using NodaTime.Extensions;
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
            string car, HttpRequest request, Garage garage, TimelineTools tools, [FromServices] IAccessPlanner? planner,
            CancellationToken left) =>
            QuestionRoutes.MadeAsync<TimelineAsked, TimelineShown>(car, request, garage, planner, "There is no timeline for that",
                (planning, history, asked) => Made(Supplied(garage, history, asked.Goals, tools, planning, left), asked.Seconds, tools,
                    left), left))
        .WithMetadata(new BodyLimit(QuestionRoutes.MostBytes));

    /// <summary>The tasks of a car, as they stand now.</summary>
    internal static Result<SuppliedWork> Supplied(
        Garage garage, CarHistory history, ValueList<Fact> goals, TimelineTools tools, IAccessPlanner planner, CancellationToken cancel) =>
        SuppliedWork.Of(history, garage.Histories(), goals, tools.Ladders, planner, tools.Clock.GetCurrentInstant(),
            DateOnly.FromDateTime(tools.Clock.GetLocalNow().DateTime), cancel);

    private static Result<TimelineShown> Made(Result<SuppliedWork> supplied, double asked, TimelineTools tools, CancellationToken cancel)
    {
        if (!supplied.IsGood)
            return Result<TimelineShown>.Bad(supplied.Faults);
        var work = supplied.Value.Work;
        var tasks = work.Tasks();
        if (!tasks.IsGood)
            return Result<TimelineShown>.Bad(tasks.Faults);
        var seconds = Math.Clamp(asked, 0, MostSeconds);
        var answer = new TimelinePlanner(seconds > 0 ? tools.Scheduler() : new FirstScheduler())
            .Of(work.Ask(supplied.Value.Now), new(TimeSpan.FromSeconds(seconds)), null, cancel);
        return answer.IsGood
            ? Result<TimelineShown>.Good(new(work.Plan, tasks.Value, answer.Value))
            : Result<TimelineShown>.Bad(answer.Faults);
    }
}
