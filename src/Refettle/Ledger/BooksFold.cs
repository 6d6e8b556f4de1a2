using Refettle.Forecast;
using Refettle.Logbook;
using Refettle.Stock;

namespace Refettle.Ledger;

/// <summary>Keeps the books of a car from its log.</summary>
public static class BooksFold
{
    /// <param name="history">The car's own log.</param>
    /// <param name="shelf">Made from the logs of all cars. An order counts in the car whose log it is in,
    /// whichever car its pieces end up on.</param>
    public static Books Of(CarHistory history, Shelf shelf)
    {
        var belongs = new Belonging(history.Car);
        var receipts = Receipts(history, belongs);
        var settled = receipts.Where(pair => pair.Settles is not null).ToLookup(pair => pair.Settles!.Value, pair => pair.Line.Spent);
        ValueList<MoneyLine> money =
        [
            .. receipts.Select(pair => pair.Line),
            .. shelf.Orders.Where(order => order.Car == history.Car.Id)
                .SelectMany(order => OrderMoney.Of(order, belongs, settled.Contains(order.Id) ? settled[order.Id].Sum() : null)),
            .. shelf.Outside.Where(work => work.Car == history.Car.Id)
                .Select(work => Outside(work, belongs, settled.Contains(work.Id) ? settled[work.Id].Sum() : null)).OfType<MoneyLine>(),
        ];
        var timed = TimedWork.Of(history).Select(work => work with { Job = work.Job ?? belongs.To(work.About) }).ToValueList();
        return new(history.Car.Currency, money.OrderBy(line => line.On).ToValueList(), timed, Sums(history.Car, money, timed));
    }

    /// <summary>Whether a job is among what will be done: chosen or a must; before anything was chosen also what is wanted.</summary>
    public static bool IsChosen(Car car, Job job) =>
        job.Wish == Wish.Must || (car.Scope is { } chosen ? chosen.Contains(job.Id) : job.Wish == Wish.Want);

    private static List<(MoneyLine Line, Guid? Settles)> Receipts(CarHistory history, Belonging belongs) =>
        [.. from line in history.Lines
            where line is { Standing: Standing.InForce, Happening: MoneySpent }
            let receipt = ((MoneySpent)line.Happening!).Receipt
            let sign = receipt.IsRefund ? -1 : 1
            select (new MoneyLine(line.Entry.Id, receipt.On, receipt.For, receipt.Kind, belongs.To(receipt.About),
                sign * receipt.Amount.Amount, 0, true, receipt.Attachment), receipt.Settles)];

    private static MoneyLine? Outside(OutsideWork work, Belonging belongs, decimal? paid)
    {
        var price = work.Price?.Amount ?? 0;
        var owed = work.IsAway ? Math.Max(0, price - (paid ?? 0)) : 0;
        var spent = paid is null && !work.IsAway ? price : 0;
        return paid is not null && owed == 0 ? null
            : new(work.Id, work.On, $"{work.To}: {work.Work}", SpendKind.OutsideWork,
                Belonging.ToOne(work.Lines.Select(line => belongs.To(line.Item.What))), spent, owed,
                paid is not null || work.Price is not null);
    }

    private static ValueList<JobSum> Sums(Car car, ValueList<MoneyLine> money, ValueList<TimedWork> work)
    {
        var jobs = car.Jobs
            .Select(job => Sum(job.Id, job.Name, IsChosen(car, job), car.JobsDone.Contains(job.Id), job.Parts.Amount, job.Work)).ToList();
        return [.. jobs, Sum(null, "Opening, closing, shared and other", true, false, 0, default)];

        // What names a job that is not there any more counts with the rest.
        JobSum Sum(string? id, string name, bool isChosen, bool isDone, decimal planned, Minutes plannedWork)
        {
            bool Mine(string? job) => id is null ? job is null || car.Jobs.All(known => known.Id != job) : job == id;
            return new(id, name, isChosen, isDone, planned, money.Where(line => Mine(line.Job)).Sum(line => line.Spent),
                money.Where(line => Mine(line.Job)).Sum(line => line.Owed),
                plannedWork, new(work.Where(one => Mine(one.Job)).Sum(one => one.Took.Value)));
        }
    }
}
