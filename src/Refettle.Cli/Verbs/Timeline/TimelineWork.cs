using System.CommandLine;
using Refettle.Access;
using Refettle.Timeline;
using Refettle.Timeline.Network;

namespace Refettle.Cli.Verbs.Timeline;

/// <summary>A car with the tasks that its jobs, and goals that are named, ask for.</summary>
internal sealed record TimelineWork(OpenCar Open, Plan Plan, TaskNetwork Network)
{
    public static Argument<string[]> Goals { get; } = new("goal")
    {
        Description = "Further goals, as for reach; the chosen jobs are in it anyway.",
        Arity = ArgumentArity.ZeroOrMore,
    };

    /// <summary>Answers with the tasks of the car that is spoken of.</summary>
    public static Reply With(Desk desk, ParseResult parsed, Func<TimelineWork, Reply> answer) => desk.WithCar(parsed, open =>
        Reply.To(Verbs.Goals.Read(parsed.GetValue(Goals) ?? []), named => Reply.To(desk.Ladders(), ladders =>
        {
            var jobs = ChosenJobs.Of(open.Car);
            var question = new Question { Goals = ChosenJobs.Goals(jobs, named) };
            if (question.Goals.Count == 0 && jobs.Count == 0 && open.Car.Calendar.Tasks.Count == 0)
                return Reply.Bad([new("timeline", "there is nothing to do", "Think of jobs (refettle job add), or name goals: refettle timeline 'free(rear-axle)'.")]);
            var faults = question.Goals.Count == 0 ? [] : QuestionCheck.Of(open.Car, question);
            if (faults.Any(fault => fault.Severity == Severity.Error))
                return Reply.Bad(faults);
            var plan = question.Goals.Count == 0 ? new() { Question = question, Status = PlanStatus.Optimal } : desk.Planner.Reach(open.Car, question, desk.Around.Interrupt);
            if (plan.Status == PlanStatus.Impossible)
                return new(Views.PlanView.Of(plan), Forms.PlanForm.Of(plan)) { Code = desk.CodeOf(plan) };
            var network = NetworkPlanner.Of(new() { Car = open.Car, Plan = plan, Jobs = jobs, Ladders = ladders });
            return answer(new(open, plan, network));
        })));
}
