using System.CommandLine;
using NodaTime;
using NodaTime.Extensions;
using Refettle.Access;
using Refettle.Cli.Commands;
using Refettle.Cli.Views;
using Refettle.Sheets.Suppliers;
using Refettle.Stock;
using Refettle.Stock.Baskets;
using Refettle.Stuck;
using Refettle.Timeline;

namespace Refettle.Cli.Verbs.Stock;

/// <summary><c>basket</c>: all that the plans use up, and what to order by when.</summary>
internal static class BasketVerb
{
    public static Command Make(Desk desk)
    {
        var goals = new Argument<string[]>("goal")
        { Description = "What should become true, as for reach; for another car with its name before a colon: 'heron-18:free(engine)'. Nothing for the jobs that are chosen.", Arity = ArgumentArity.ZeroOrMore };
        var renew = new Option<string[]>("--renew")
        { Description = "Further parts of the car that will be renewed.", HelpName = "part", AllowMultipleArgumentsPerToken = true };
        var by = StockWords.Day(desk, "--by", "The day it must be in hand; by default the day of the step that takes it.");
        var sure = new Option<double>("--sure")
        { Description = "How sure an order must be to come in time, 0.5 to 0.99.", DefaultValueFactory = _ => Basket.UsualConfidence };
        var export = new Option<string?>("--export") { Description = "Writes what is to be ordered as CSV.", HelpName = "file" };
        return new Command("basket",
            "Everything the plans of all cars use up: what is in hand, what is to come, what to order by when.") { goals, renew, by, sure,
                export }
            .Answers(desk, parsed => OpenShelf.With(desk, parsed, open => parsed.GetValue(sure) is < 0.5 or > 0.99
                ? Reply.Bad([new("--sure", $"{parsed.GetValue(sure)} is out of range", "Give 0.5 to 0.99.")])
                : Answer(desk, open, parsed.GetValue(goals) ?? [], parsed.GetValue(renew) ?? [], parsed.GetValue(by), parsed.GetValue(sure),
                    parsed.GetValue(export))));
    }

    private static Reply Answer(Desk desk, OpenShelf open, string[] goals, string[] renew, DateOnly? by, double sure, string? export)
    {
        var read = desk.Ladders();
        var faults = (read.IsGood ? [] : read.Faults)
            .Concat(renew.Select(part => Unknown.Part(open.Open.Car.Structure, part)).OfType<Fault>())
            .Concat(goals.Where(goal => open.Cars.All(car => !IsOf(open, car.Car, goal)))
                .Select(goal => new Fault(goal, "there is no such car in the store", "Write it as car:fact."))).ToList();
        var planned = faults.Count > 0 ? [] : open.Cars.Select(car => Planned(open, car, goals, renew, read.Value)).ToList();
        faults.AddRange(planned.Where(car => !car.IsGood).SelectMany(car => car.Faults));
        if (faults.Count > 0)
            return Reply.Bad(faults);
        var plans = planned.Select(car => car.Value).ToValueList();
        var basket = ShelfPlanner.Of(open.Shelf, plans, desk.Around.Clock.GetCurrentInstant(), open.Today, sure, by,
            desk.Around.Interrupt).Basket;
        if (export is not null && TextFile.Write(desk.PathOf(export), OrderListWriter.Write(basket)) is { IsGood: false } unwritten)
            return Reply.Bad(unwritten.Faults);
        var fits = TrialFits.Of(open.Shelf, open.Cars.Select(car => car.Car), open.Today);
        return new(BasketView.Of(basket, fits), new
        {
            basket.Confidence,
            basket.Lines,
            basket.Purchases,
            basket.Unnumbered,
            basket.MadeUp,
            basket.Costs,
            trialFits = fits,
            steps = plans.SelectMany(plan => StepSupplies.Of(plan.Work.Car, plan.Work.Plan, basket)
                .Select(step => new { car = plan.Work.Car.Id, fact = plan.Work.Plan.Steps[step.Step].Fact, step.InHand })).ToValueList(),
        })
        {
            Faults = open.Shelf.Faults,
            Code = plans.Any(plan => plan.Work.Plan.Status == PlanStatus.Impossible) ? ExitCode.Impossible : ExitCode.Good,
        };
    }

    /// <summary>The goals that are given for a car; where none are given at all, its chosen jobs.</summary>
    private static Result<PlannedCar> Planned(OpenShelf open, OpenCar car, string[] goals, string[] renew, LadderSet ladders)
    {
        var wanted = Verbs.Goals
            .Read(goals.Where(goal => IsOf(open, car.Car, goal)).Select(goal => goal[(goal.IndexOf(':', StringComparison.Ordinal) + 1)..]));
        if (!wanted.IsGood)
            return Result<PlannedCar>.Bad(wanted.Faults);
        ValueList<string> renewed = car.Car.Id == open.Open.Car.Id ? renew.ToValueList() : [];
        if (goals.Length > 0 ? wanted.Value.Count == 0 : ChosenJobs.Of(car.Car).Count == 0)
            return Result<PlannedCar>.Good(PlannedCar.Of(car.History, null) with { Renew = renewed });
        var work = TimelineWork.Of(goals.Length > 0 ? car.Car with { Jobs = [] } : car.Car, wanted.Value, ladders, open.Desk.Planner,
            open.Desk.Around.Interrupt);
        return work.IsGood ? Result<PlannedCar>.Good(new(car.History, work.Value, renewed)) : Result<PlannedCar>.Bad(work.Faults);
    }

    private static bool IsOf(OpenShelf open, Car car, string goal) =>
        goal.IndexOf(':', StringComparison.Ordinal) is > 0 and var at ? goal[..at] == car.Id : car.Id == open.Open.Car.Id;
}
