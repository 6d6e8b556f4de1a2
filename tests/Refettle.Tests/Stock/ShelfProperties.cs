using CsCheck;
using Refettle.Logbook;
using Refettle.Stock;

namespace Refettle.Tests.Stock;

public sealed class ShelfProperties
{
    [Fact]
    public void Any_order_of_the_same_entries_gives_the_same_shelf() =>
        Gen.Select(RandomStock.Entries, Gen.Int).Sample((entries, seed) =>
        {
            var shuffled = entries.ToArray();
            new Random(seed).Shuffle(shuffled);
            var again = ShelfFold.Of(Garage.Histories([.. shuffled, .. entries.Take(5)]).Reverse());
            Assert.Equal(Garage.ShelfOf(entries), again);
        });

    /// <summary>What came in is on hand, fitted, scrapped, away, sent back …: nothing is counted twice and nothing is lost.</summary>
    [Fact]
    public void Pieces_of_each_number_come_out_even_over_all_places() =>
        RandomStock.Entries.Sample(entries => Assert.All(
            Garage.ShelfOf(entries).Accounts.GroupBy(account => account.Batch.Number),
            number => Assert.Equal(0, number.Sum(account => account.Count))));

    [Fact]
    public void The_shelf_agrees_with_an_independent_recount() =>
        RandomStock.Entries.Sample(entries =>
        {
            var (shelf, recount) = (Garage.ShelfOf(entries), Recount.Of(Garage.Histories(entries)));
            Assert.All(RandomStock.Numbers, number => Assert.Equal(recount.OnHand(number), shelf.OnHand(number)));
        });

    [Fact]
    public void Each_line_of_an_order_came_was_cancelled_or_is_still_to_come() =>
        RandomStock.Entries.Sample(entries => Assert.All(Garage.ShelfOf(entries).Orders.SelectMany(order => order.Lines), line =>
        {
            Assert.True(line.ToCome >= 0);
            Assert.Equal(Math.Max(line.Line.Count, line.Arrived + line.Cancelled), line.Arrived + line.Cancelled + line.ToCome);
        }));

    [Fact]
    public void Striking_an_entry_gives_the_shelf_without_it() =>
        Gen.Select(RandomStock.Entries, Gen.Int[0, 1000]).Sample((entries, which) =>
        {
            var shelf = Garage.ShelfOf(entries);
            var device = new Garage("other");
            device.Learn(entries);
            var car = which % 2 == 0 ? Garage.Estate : Garage.Saloon;
            var newest = EntryOrder.Of(entries.Where(entry => entry.Car == car)).Entries[^1];
            var strike = device.Write(car, new Struck(newest.Id, null));
            Assert.Equal(Garage.ShelfOf([.. entries.Where(entry => entry != newest)]), device.Shelf());
            device.Write(car, new Struck(strike, null));
            Assert.Equal(shelf, device.Shelf());
        });

    [Fact]
    public void More_left_than_was_there_is_told_and_never_hidden() =>
        RandomStock.Entries.Sample(entries =>
        {
            var shelf = Garage.ShelfOf(entries);
            Assert.Equal(shelf.Holdings.Any(holding => holding.Count < 0),
                shelf.Faults.Any(fault => fault.Found.Contains("left the shelf", StringComparison.Ordinal)));
        });
}
