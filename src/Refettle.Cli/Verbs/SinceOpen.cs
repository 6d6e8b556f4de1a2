using System.CommandLine;
using Refettle.Access;
using Refettle.Cli.Views;
using Refettle.Discovery;
using Refettle.Logbook;
using Refettle.Timeline;

namespace Refettle.Cli.Verbs;

/// <summary><c>scope --since-open</c>: what else is worth doing once the car is opened up.</summary>
internal static class SinceOpen
{
    public static Option<string[]> Asked { get; } = new("--since-open")
    {
        Description = "What else is worth doing since it is open, now and later; with facts, once these are true, else once the chosen jobs are opened.",
        HelpName = "fact",
        Arity = ArgumentArity.ZeroOrMore,
        AllowMultipleArgumentsPerToken = true,
    };

    public static Option<string?> Take { get; } = new("--take")
    { Description = "Adds one of these offers as a maybe.", HelpName = "offer" };

    public static bool IsAsked(ParseResult parsed) => parsed.GetResult(Asked) is { Implicit: false } || parsed.GetValue(Take) is not null;

    public static Reply Answer(Desk desk, ParseResult parsed, OpenCar open) =>
        Reply.To(Goals.Read(parsed.GetValue(Asked) ?? []), named => Reply.To(desk.SoundKits(), kits =>
    {
        var goals = named.Count > 0 ? named : ChosenJobs.Goals(ChosenJobs.Of(open.Car), []);
        if (goals.Count == 0)
            return Reply.Bad([new("--since-open", "nothing is chosen that opens anything",
                "Choose jobs, refettle scope --keep, or name what will be open: --since-open 'free(gearbox)'.")]);
        if (QuestionCheck.Of(open.Car, new() { Goals = goals }).Where(fault => fault.Severity == Severity.Error)
            .ToList() is { Count: > 0 } faults)
            return Reply.Bad(faults);
        var answer = new SinceOpenPlanner(desk.Planner)
            .Of(new() { Car = open.Car, Goals = goals, Kits = kits.Kits }, desk.Around.Interrupt);
        return answer.Plan.Status == PlanStatus.Impossible
            ? new(PlanView.Of(answer.Plan), Forms.PlanForm.Of(answer.Plan)) { Code = desk.CodeOf(answer.Plan) }
            : parsed.GetValue(Take) is { } taken ? Add(desk, open, answer, taken)
            : new(SinceOpenView.Of(answer), new { car = open.Car.Id, goals, answer.Offers, notPriced = answer.Open });
    }));

    private static Reply Add(Desk desk, OpenCar open, SinceOpenAnswer answer, string taken) =>
        answer.Offers.FirstOrDefault(offer => offer.Job.Id == taken) is not { } offer
        ? Reply.Bad([new($"offer {taken}", "it is not among them",
            NearNames.Ask(taken, answer.Offers.Select(one => one.Job.Id), "refettle scope --since-open shows them."))])
        : offer.Source == OfferSource.Job
        ? Reply.Bad([new($"offer {taken}", "it is a job already", "Take it on: refettle choose, or refettle job set.")])
        : desk.Record(open, [new JobEntered(offer.Job)],
            now => Reply.Said($"Job {taken}, maybe: {offer.Job.Name}. Say what it is worth: refettle job set {taken} worth=…",
                new { car = now.Car.Id, job = offer.Job }));
}
