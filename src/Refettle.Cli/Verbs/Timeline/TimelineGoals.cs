using System.CommandLine;
using NodaTime;
using Refettle.Stock.Baskets;
using Refettle.Timeline;

namespace Refettle.Cli.Verbs.Timeline;

/// <summary>The goals of a timeline beside the chosen jobs, and the tasks that follow.</summary>
internal static class TimelineGoals
{
    public static Argument<string[]> Named { get; } = new("goal")
    {
        Description = "Further goals, as for reach; the chosen jobs are in it anyway.",
        Arity = ArgumentArity.ZeroOrMore,
    };

    /// <summary>Answers with the tasks of the car that is spoken of.</summary>
    public static Reply With(Desk desk, ParseResult parsed, Func<OpenCar, TimelineWork, Reply> answer) => desk.WithCar(parsed, open =>
        Reply.To(Goals.Read(parsed.GetValue(Named) ?? []), named => Reply.To(desk.Ladders(), ladders =>
            Reply.To(TimelineWork.Of(open.Car, named, ladders, desk.Planner, desk.Around.Interrupt), work => work.Network is not null
                ? answer(open, Supplied(desk, open, work))
                : new(Views.PlanView.Of(work.Plan), Forms.PlanForm.Of(work.Plan)) { Code = desk.CodeOf(work.Plan) }))));

    /// <summary>Waiting for what is not in hand.</summary>
    private static TimelineWork Supplied(Desk desk, OpenCar open, TimelineWork work) => ShelfPlanner.Supplied(
        work, desk.All(open.Logbook).Select(car => car.History).ToList(), desk.Planner, Instant.FromDateTimeOffset(desk.Around.Clock.GetUtcNow()), desk.Today, desk.Around.Interrupt);
}
