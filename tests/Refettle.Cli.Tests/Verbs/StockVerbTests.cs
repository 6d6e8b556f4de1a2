namespace Refettle.Cli.Tests.Verbs;

public sealed class StockVerbTests : IDisposable
{
    private readonly Bench _bench = new Bench().WithCar();

    public void Dispose() => _bench.Dispose();

    [Fact]
    public void A_number_that_is_replaced_is_named()
    {
        Good("stock", "assign", "DR-203", "part damper");
        Assert.Empty(_bench.Error);
        Good("stock", "assign", "NOPE", "part damper");
        Assert.Contains("part damper: it took 1 × DR-203 before", _bench.Error, StringComparison.Ordinal);
        Good("stock", "assign", "NOPE", "part damper");
        Assert.Empty(_bench.Error);
    }

    [Fact]
    public void Keeping_more_than_are_free_says_how_many_there_are()
    {
        Good("stock", "count", "DR-203=2");
        Good("stock", "reserve", "DR-203=1", "--for", "part damper");
        Assert.Empty(_bench.Error);
        Good("stock", "reserve", "DR-203=5", "--for", "part damper");
        Assert.Contains("number DR-203: 6 are kept, 2 are on the shelf", _bench.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void More_than_was_ordered_comes_only_where_that_is_said()
    {
        Good("orders", "place", "Northgate", "DR-203=2@48");
        Good("orders", "arrived", "last");
        Assert.Equal(ExitCode.Faults, _bench.Run("orders", "arrived", "last", "DR-203=2"));
        Assert.Contains("--more", _bench.Error, StringComparison.Ordinal);
        Assert.Equal(96, _bench.Json("ledger").GetProperty("spent").GetDecimal());
        Good("orders", "arrived", "last", "DR-203=2", "--more");
        Assert.Contains("on hand 4", _bench.Out("stock", "DR-203"), StringComparison.Ordinal);
    }

    [Fact]
    public void What_leaves_for_a_shop_has_its_work_said_and_leaves_once()
    {
        Assert.Equal(ExitCode.Faults, _bench.Run("orders", "send", "Plater", "part damper", "--work", ""));
        Assert.Contains("what is to be done", _bench.Error, StringComparison.Ordinal);
        Good("orders", "send", "Plater", "part damper", "--work", "zinc");
        Assert.Equal(ExitCode.Faults, _bench.Run("orders", "send", "Blaster", "part damper", "--work", "blast"));
        Assert.Contains("part damper: it is away at Plater", _bench.Error, StringComparison.Ordinal);
        Good("orders", "back", "Plater", "--found", "good");
        Good("orders", "send", "Blaster", "part damper", "--work", "blast");
    }

    [Fact]
    public void A_number_that_only_a_suppliers_list_knows_is_known()
    {
        Good("stock", "import", _bench.File("north.csv", "part number,description,price\nDR-203,Brake drum,48.50\n"), "--supplier",
            "Northgate");
        Good("stock", "import", _bench.File("south.csv", "part number,description,price\nDR-203,Drum,51.00\n"), "--supplier", "Southgate");
        var told = _bench.Out("stock", "dr-203");
        Assert.Contains("at Northgate for 48.50 EUR each, list of", told, StringComparison.Ordinal);
        Assert.Contains("at Southgate for 51.00 EUR each, list of", told, StringComparison.Ordinal);
        Assert.Equal(2, _bench.Json("stock", "DR-203").GetProperty("offers").GetArrayLength());
        Assert.Equal(ExitCode.Faults, _bench.Run("stock", "DR-204"));
        Assert.Contains("DR-203", _bench.Error, StringComparison.Ordinal);
    }

    private void Good(params string[] words) =>
        Assert.True(_bench.Run(words) == ExitCode.Good, $"{string.Join(' ', words)}: {_bench.Error}");
}
