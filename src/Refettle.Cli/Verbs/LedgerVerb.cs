using System.CommandLine;
using Refettle.Access;
using Refettle.Cli.Verbs.Stock;
using Refettle.Cli.Views;
using Refettle.Ledger;
using Refettle.Stock;
using Refettle.Timeline;

namespace Refettle.Cli.Verbs;

internal static class LedgerVerb
{
    public static Command Make(Desk desk)
    {
        var seed = new Option<ulong>("--seed")
        { Description = "Another seed, other futures; the same seed, the same answer.", DefaultValueFactory = _ => 1 };
        var entries = new Option<bool>("--entries") { Description = "Also every receipt, order and timed step." };
        return new Command("ledger", "Hours and money: planned, spent, still to come.") { seed, entries }
            .Answers(desk, parsed => OpenShelf.With(desk, parsed, shelf =>
            {
                var books = Books(shelf, shelf.Open);
                var toCome = StillToCome.Of(shelf.Open.Car, books, Steps(desk, shelf.Open.Car), parsed.GetValue(seed));
                return new(LedgerView.Of(books, toCome, parsed.GetValue(entries)), new
                {
                    car = shelf.Open.Car.Id,
                    currency = books.Currency,
                    spent = books.Spent,
                    owed = books.Owed,
                    worked = books.Worked,
                    jobs = books.Jobs,
                    money = books.Money,
                    work = books.Work,
                    toCome,
                });
            }));
    }

    public static Books Books(OpenShelf shelf, OpenCar now) =>
        BooksFold.Of(now.History, ShelfFold.Of(shelf.Cars.Select(car => car.Car.Id == now.Car.Id ? now.History : car.History)));

    /// <summary>Minutes to open and to close of each step that the chosen jobs still need; none when no plan reaches them.</summary>
    private static IEnumerable<Minutes> Steps(Desk desk, Car car)
    {
        var question = new Question { Goals = ChosenJobs.Goals(ChosenJobs.Of(car), []) };
        if (question.Goals.Count == 0 || QuestionCheck.Of(car, question).Any(fault => fault.Severity == Severity.Error))
            return [];
        return desk.Planner.Reach(car, question, desk.Around.Interrupt).Steps.SelectMany(step => new[] { step.Cost.Open, step.Cost.Close });
    }
}
