using CsCheck;
using Refettle.Ledger;
using Refettle.Logbook;
using Refettle.Stock;
using Refettle.Tests.Logbook;
using Refettle.Tests.Stock;

namespace Refettle.Tests.Ledger;

public sealed class BooksTests
{
    private static Books Of(CarHistory history) => BooksFold.Of(history, ShelfFold.Of([history]));

    /// <summary>All that is in force, added up entry by entry in another way: nothing is missing and nothing counts twice.</summary>
    [Fact]
    public void Sums_are_those_of_an_independent_count() => RandomMoney.Entries.Sample(entries =>
    {
        var histories = Garage.Histories(entries);
        var shelf = ShelfFold.Of(histories);
        var all = histories.SelectMany(history => history.Lines).Where(line => line.Standing == Standing.InForce).ToList();
        foreach (var history in histories)
        {
            var books = BooksFold.Of(history, shelf);
            var own = history.Lines.Where(line => line.Standing == Standing.InForce).ToList();
            Assert.Equal(Spent(own, all), books.Spent);
            Assert.Equal(books.Spent, books.Jobs.Sum(job => job.Spent));
            Assert.Equal(books.Owed, books.Jobs.Sum(job => job.Owed));
            // Nothing closes the joint again: it is opened once, whatever further marks say.
            var worked = own.Where(line => line.Happening is StepDone).Take(1).Concat(own.Where(line => line.Happening is Tried));
            Assert.Equal(worked.Sum(line => line.Happening is StepDone done
                ? done.Took!.Value.Value
                : ((Tried)line.Happening!).Try.Took!.Value.Value), books.Worked.Value);
            Assert.Equal(books.Worked.Value, books.Jobs.Sum(job => job.Worked.Value));
        }
    });

    private static decimal Spent(List<HistoryLine> own, List<HistoryLine> all)
    {
        var receipts = own.Select(line => line.Happening).OfType<MoneySpent>().Select(spent => spent.Receipt).ToList();
        var sum = receipts.Sum(receipt => receipt.IsRefund ? -receipt.Amount.Amount : receipt.Amount.Amount);
        foreach (var line in own.Where(line => receipts.TrueForAll(receipt => receipt.Settles != line.Entry.Id)))
        {
            if (line.Happening is Ordered ordered)
                sum += Came(ordered, line.Entry.Id, all);
            else if (line.Happening is SentOut sent && sent.Items.All(item => Back(line.Entry.Id, item.What, all) >= item.Count))
                sum += sent.Price?.Amount ?? 0;
        }

        return sum;
    }

    private static decimal Came(Ordered ordered, Guid id, List<HistoryLine> all)
    {
        var came = all.Select(line => line.Happening).OfType<Arrived>().Where(arrived => arrived.Order == id)
            .SelectMany(arrived => arrived.Lines).ToList();
        var back = all.Select(line => line.Happening).OfType<SentBack>().Where(sent => sent.Order == id).SelectMany(sent => sent.Lines)
            .ToList();
        return ordered.Lines.Sum(line => (line.Each?.Amount ?? 0)
                * Math.Max(0,
                    came.Where(one => one.Ordered == line.Number).Sum(one => one.Count) - back.Where(one => one.Ordered == line.Number)
                        .Sum(one => one.Count)))
            + (came.Count > 0 ? ordered.Carriage?.Amount ?? 0 : 0);
    }

    private static int Back(Guid sent, string what, List<HistoryLine> all) => all.Select(line => line.Happening).OfType<CameBack>()
        .Where(back => back.Sent == sent).SelectMany(back => back.Items).Where(item => item.What == what).Sum(item => item.Count);

    /// <summary>An entry that is struck leaves no trace in the sums, and the strike struck brings it back.</summary>
    [Fact]
    public void Striking_an_entry_gives_the_books_without_it() => Gen.Select(RandomMoney.Entries, Gen.Bool).Sample((entries, isSaloon) =>
    {
        var (car, device) = (isSaloon ? Garage.Saloon : Garage.Estate, new Garage("other"));
        device.Learn(entries);
        Books Now(IReadOnlyCollection<Entry> known) => BooksFold.Of(CarHistory.Of(car, known), Garage.ShelfOf(known));
        var newest = entries.Last(entry => entry.Car == car);
        var before = Now(entries);
        var strike = device.Write(car, new Struck(newest.Id, null));
        Assert.Equal(Now([.. entries.Where(entry => entry != newest)]), Now(device.Known));
        device.Write(car, new Struck(strike, null));
        Assert.Equal(before, Now(device.Known));
    });

    /// <summary>A mark that finds the step done takes nobody any time, but can tell what it took; opened again
    /// after it was closed is work again.</summary>
    [Fact]
    public void Minutes_count_once_for_a_step_that_is_marked_twice()
    {
        StepDone Opened(int minutes) => new(Fact.Open("tank-body"), "spanner", new(minutes));
        StepReversed Closed(int minutes) => new(Fact.Open("tank-body"), new(minutes));
        Assert.Equal(20, Of(SmallCar.After(Opened(20), Opened(9))).Worked.Value);
        Assert.Equal(25, Of(SmallCar.After(Opened(20), Closed(5), Closed(9))).Worked.Value);
        Assert.Equal(33, Of(SmallCar.After(Opened(20), Closed(5), Opened(8))).Worked.Value);
        Assert.Equal(9, Of(SmallCar.After(new StepDone(Fact.Open("tank-body"), "spanner", null), Opened(9), Opened(7))).Worked.Value);
        Assert.Equal(9, Of(SmallCar.After(new StepDone(Fact.Off("tank"), null, null), Opened(9))).Worked.Value);
        var again = HappeningCheck.Of(SmallCar.After(Opened(20)), Opened(9)).Single();
        Assert.Equal((Severity.Note, "Marking it again does no harm; of its minutes those told first count."),
            (again.Severity, again.Mend));
    }

    [Fact]
    public void A_receipt_takes_the_place_of_what_the_order_was_to_cost()
    {
        var device = new TestDevice("bench");
        foreach (var happening in SmallCar.Opening)
            device.Write(happening);
        var order = device.Write(new Ordered("Harbour Rubber", [new("A-1", 4, new(10))], new(2026, 3, 1), null, null, new(5))).Id;
        Assert.Equal((0, 45), (Of(device.History()).Spent, Of(device.History()).Owed));
        device.Write(new Arrived(order, [new("A-1", new("A-1"), 3)], new(2026, 3, 9)));
        Assert.Equal((35, 10), (Of(device.History()).Spent, Of(device.History()).Owed));
        device.Write(new MoneySpent(new(new(42), "invoice 7", SpendKind.Parts, null, order, null, new(2026, 3, 9))));
        Assert.Equal((42, 3), (Of(device.History()).Spent, Of(device.History()).Owed));
        device.Write(new Arrived(order, [new("A-1", new("A-1"), 1)], new(2026, 3, 12)));
        Assert.Equal((42, 0), (Of(device.History()).Spent, Of(device.History()).Owed));
    }

    [Fact]
    public void Money_and_hours_go_to_the_job_that_names_the_thing()
    {
        var books = Of(SmallCar.After(
            new JobEntered(Jobs.Tank with { Goals = [Fact.Off("tank")] }), new NumberAssigned("part tank", "T-1", 1),
            new MoneySpent(new(new(20), "sealer", SpendKind.Consumables, "job tank", null, null, new(2026, 3, 1))),
            new MoneySpent(new(new(7), "strap", SpendKind.Parts, "part tank", null, null, new(2026, 3, 1))),
            new MoneySpent(new(new(3), "gloves", SpendKind.Consumables, null, null, null, new(2026, 3, 1))),
            new Ordered("Harbour Rubber", [new("T-1", 1, new(90)), new("Z-9", 1, new(2))], new(2026, 3, 1), null, null, null),
            new JobDone("tank", new(95)), new StepDone(Fact.Open("wheel-axle"), "spanner", new(8))));
        var tank = books.Jobs.Single(job => job.Job == "tank");
        var rest = books.Jobs.Single(job => job.Job is null);
        Assert.Equal((27, 90, 95), (tank.Spent, tank.Owed, tank.Worked.Value));
        Assert.Equal((3, 2, 8), (rest.Spent, rest.Owed, rest.Worked.Value));
        Assert.True(tank.IsDone);
    }

    /// <summary>A job that nobody chose is left out and counted, unless something was spent on it.</summary>
    [Fact]
    public void Jobs_that_are_not_chosen_and_took_nothing_are_only_counted()
    {
        var (tank, floor) = (Jobs.Tank with { Wish = Wish.Maybe }, Jobs.Tank with { Id = "floor", Name = "Floor", Wish = Wish.Maybe });
        var none = Of(SmallCar.After(new JobEntered(tank), new JobEntered(floor)));
        Assert.Equal((1, "2 jobs that are not chosen are left out."), (none.JobsThatCount.Count(), none.NotChosen));
        var some = Of(SmallCar.After(new JobEntered(tank), new JobEntered(floor), new ScopeChosen(["floor"]),
            new MoneySpent(new(new(20), "sealer", SpendKind.Consumables, "job tank", null, null, new(2026, 3, 1)))));
        Assert.Equal(["floor", "tank", null], some.JobsThatCount.Select(job => job.Job).OrderBy(job => job ?? "~", StringComparer.Ordinal));
        Assert.Equal("", some.NotChosen);
    }

    /// <summary>Twice the plan again and again: the rest is then expected to take about twice its plan, and more surely so.</summary>
    [Fact]
    public void The_overrun_so_far_speaks_about_the_rest()
    {
        var fresh = StillToCome.Of(SmallCar.After().Car, Of(SmallCar.After()), [new(100), new(60)], 1);
        Assert.Equal(160, fresh.PlannedWork.Value);
        Assert.InRange(fresh.WorkHalf.Value, 160, 250);
        var slow = SmallCar.After(Enumerable.Repeat<Happening[]>([new StepDone(Fact.Open("tank-body"), "spanner", new(10)),
            new StepReversed(Fact.Open("tank-body"), null)], 60).SelectMany(pair => pair).ToArray());
        var known = StillToCome.Of(slow.Car, Of(slow), [new(100), new(60)], 1);
        Assert.Equal(60, known.Pace.Tasks);
        Assert.Equal(2, known.Pace.MiddleFactor, 0.05);
        Assert.InRange(known.WorkHalf.Value, 290, 350);
        Assert.True(known.WorkFourInFive.Value / known.WorkHalf.Value < fresh.WorkFourInFive.Value / fresh.WorkHalf.Value);
    }
}
