using System.CommandLine;
using Refettle.Access;
using Refettle.Cli.Commands;
using Refettle.Cli.Views;
using Refettle.Sheets.Suppliers;
using Refettle.Stock;
using Refettle.Stock.Baskets;

namespace Refettle.Cli.Verbs.Stock;

/// <summary><c>basket</c>: all that the plans use up, and what to order by when.</summary>
internal static class BasketVerb
{
    /// <summary>Four promises in five are kept by the day that is counted on.</summary>
    private const double UsualConfidence = 0.8;

    public static Command Make(Desk desk)
    {
        var goals = new Argument<string[]>("goal") { Description = "What should become true, as for reach; for another car with its name before a colon: 'heron-18:free(engine)'. Nothing for the jobs that are chosen.", Arity = ArgumentArity.ZeroOrMore };
        var renew = new Option<string[]>("--renew") { Description = "Further parts of the car that will be renewed.", HelpName = "part", AllowMultipleArgumentsPerToken = true };
        var by = StockWords.Day(desk, "--by", "The day it must be in hand; by default the day the car has to be ready.");
        var sure = new Option<double>("--sure") { Description = "How sure an order must be to come in time, 0.5 to 0.99.", DefaultValueFactory = _ => UsualConfidence };
        var export = new Option<string?>("--export") { Description = "Writes what is to be ordered as CSV.", HelpName = "file" };
        return new Command("basket", "Everything the plans of all cars use up: what is in hand, what is to come, what to order by when.") { goals, renew, by, sure, export }
            .Answers(desk, parsed => OpenShelf.With(desk, parsed, open => parsed.GetValue(sure) is < 0.5 or > 0.99
                ? Reply.Bad([new("--sure", $"{parsed.GetValue(sure)} is out of range", "Give 0.5 to 0.99.")])
                : Answer(open, parsed.GetValue(goals) ?? [], parsed.GetValue(renew) ?? [], parsed.GetValue(by), parsed.GetValue(sure), parsed.GetValue(export))));
    }

    private static Reply Answer(OpenShelf open, string[] goals, string[] renew, DateOnly? by, double sure, string? export)
    {
        var (plans, faults) = (new List<(Car Car, Plan Plan)>(), new List<Fault>());
        faults.AddRange(renew.Select(part => Unknown.Part(open.Open.Car.Structure, part)).OfType<Fault>());
        foreach (var car in open.Cars)
        {
            var wanted = Goals(open, car.Car, goals);
            var question = wanted.IsGood ? new Question { Goals = wanted.Value } : null;
            faults.AddRange(question is null ? wanted.Faults : question.Goals.Count == 0 ? [] : QuestionCheck.Of(car.Car, question).Where(fault => fault.Severity == Severity.Error));
            if (faults.Count == 0)
                plans.Add((car.Car, question!.Goals.Count == 0 ? Nothing : open.Desk.Planner.Reach(car.Car, question, open.Desk.Around.Interrupt)));
        }

        if (faults.Concat(goals.Where(goal => open.Cars.All(car => !IsOf(open, car.Car, goal))).Select(goal => new Fault(goal, "there is no such car in the store", "Write it as car:fact."))).ToList() is { Count: > 0 } wrong)
            return Reply.Bad(wrong);
        var needs = plans.SelectMany(plan => PlanNeeds.Of(open.Car(plan.Car.Id).History, open.Shelf, plan.Plan, plan.Car.Id == open.Open.Car.Id ? renew : [], by ?? plan.Car.Due()));
        var basket = BasketPlanner.Of(open.Shelf, needs, open.Today, sure);
        if (export is not null && TextFile.Write(open.Desk.PathOf(export), OrderListWriter.Write(basket)) is { IsGood: false } unwritten)
            return Reply.Bad(unwritten.Faults);
        var fits = TrialFits.Of(open.Shelf, open.Cars.Select(car => car.Car), open.Today);
        return new(BasketView.Of(basket, fits), new
        {
            basket.Confidence,
            basket.Lines,
            basket.Purchases,
            basket.Unnumbered,
            basket.MadeUp,
            basket.Cost,
            trialFits = fits,
            steps = plans.SelectMany(plan => StepSupplies.Of(plan.Car, plan.Plan, basket).Select(step => new { car = plan.Car.Id, fact = plan.Plan.Steps[step.Step].Fact, step.InHand })).ToValueList(),
        })
        {
            Faults = open.Shelf.Faults,
            Code = plans.Any(plan => plan.Plan.Status == PlanStatus.Impossible) ? ExitCode.Impossible : ExitCode.Good,
        };
    }

    private static Plan Nothing { get; } = new() { Question = new() { Goals = [] }, Status = PlanStatus.Optimal };

    /// <summary>The goals that are given for a car; where none are given at all, those of its chosen jobs that are not done.</summary>
    private static Result<ValueList<Fact>> Goals(OpenShelf open, Car car, string[] goals) => goals.Length > 0
        ? Verbs.Goals.Read(goals.Where(goal => IsOf(open, car, goal)).Select(goal => goal[(goal.IndexOf(':', StringComparison.Ordinal) + 1)..]))
        : Result<ValueList<Fact>>.Good(car.Jobs.Where(job => (job.Wish == Wish.Must || (car.Scope?.Contains(job.Id) ?? false)) && !car.JobsDone.Contains(job.Id)).SelectMany(job => job.Goals).Distinct().ToValueList());

    private static bool IsOf(OpenShelf open, Car car, string goal) => goal.IndexOf(':', StringComparison.Ordinal) is > 0 and var at ? goal[..at] == car.Id : car.Id == open.Open.Car.Id;
}
