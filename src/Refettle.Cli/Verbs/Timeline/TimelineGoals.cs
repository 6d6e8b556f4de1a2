using System.CommandLine;
using NodaTime;
using NodaTime.Extensions;
using Refettle.Stock.Baskets;

namespace Refettle.Cli.Verbs.Timeline;

/// <summary>The goals of a timeline beside the chosen jobs, and the tasks that follow.</summary>
internal static class TimelineGoals
{
    public static Argument<string[]> Named { get; } = new("goal")
    {
        Description = "Further goals, as for reach; the chosen jobs are in it anyway.",
        Arity = ArgumentArity.ZeroOrMore,
    };

    /// <summary>Answers with the tasks of the car that is spoken of, which wait for what is not in hand.</summary>
    public static Reply With(Desk desk, ParseResult parsed, Func<OpenCar, SuppliedWork, Reply> answer) => desk.WithCar(parsed, open =>
        Reply.To(Goals.Read(parsed.GetValue(Named) ?? []), named => Reply.To(desk.Ladders(), ladders =>
            Reply.To(SuppliedWork.Of(open.History, desk.All(open.Logbook).Select(car => car.History), named, ladders, desk.Planner,
                desk.Around.Clock.GetCurrentInstant(), desk.Today, desk.Around.Interrupt),
                supplied => supplied.Work.Network is not null ? answer(open, supplied)
                    : new(Views.PlanView.Of(supplied.Work.Plan), Forms.PlanForm.Of(supplied.Work.Plan))
                    { Code = desk.CodeOf(supplied.Work.Plan) }))));
}
