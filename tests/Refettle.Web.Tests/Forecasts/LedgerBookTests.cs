using Refettle.Logbook;
using Refettle.Web.Forecasts;

namespace Refettle.Web.Tests.Forecasts;

public sealed class LedgerBookTests
{
    private static readonly DateOnly Today = new(2027, 1, 9);

    [Theory]
    [InlineData("42.50", 42.5)]
    [InlineData(" 7,25 ", 7.25)]
    public void An_amount_is_read_as_it_is_typed(string typed, double amount)
    {
        var spent = Assert.IsType<MoneySpent>(LedgerBook.Read(typed, " discs ", SpendKind.Consumables, "sills", " ", Today).Value);
        Assert.Equal(new(new((decimal)amount), "discs", SpendKind.Consumables, "job sills", null, null, Today), spent.Receipt);
    }

    [Theory]
    [InlineData("")]
    [InlineData("4 2")]
    [InlineData("-3")]
    [InlineData("1.000,50")]
    [InlineData("1,500")]
    public void What_is_no_amount_is_told(string typed) =>
        Assert.Contains("is not an amount", Assert.Single(LedgerBook.Read(typed, "discs", SpendKind.Other, "", "", Today).Faults).Found,
            StringComparison.Ordinal);

    [Fact]
    public void What_may_be_two_amounts_is_asked_for() =>
        Assert.Equal("It may be 1500 or 1.500: write the one that is meant.",
            Assert.Single(LedgerBook.Read("1,500", "discs", SpendKind.Other, "", "", Today).Faults).Mend);

    [Fact]
    public void The_books_are_told_in_words()
    {
        var line = new MoneySpent(new(new(42.5m), "discs", SpendKind.Consumables, null, null, "blue folder", Today));
        var entry = new Entry
        {
            Id = Guid.Empty,
            Car = "heron",
            Device = "d",
            Sequence = 1,
            Salt = "",
            Previous = "",
            At = default,
            Kind = "money-spent",
            Version = 1,
            Payload = ""
        };
        var history = new CarHistory(new() { Id = "heron", Name = "Heron" }, [new(entry, line, Standing.InForce, null)], []);
        var book = LedgerBook.Of(history, null);
        Assert.Equal("Spent 42.50 EUR and 0 min; 0.00 owed.", book.Sum);
        Assert.Equal(("2027-01-09: discs", "42.50; receipt: blue folder"), Assert.Single(book.Lines));
    }
}
