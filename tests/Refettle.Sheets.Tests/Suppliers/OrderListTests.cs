using System.Globalization;
using CsvHelper;
using Refettle.Sheets.Suppliers;
using Refettle.Stock;
using Refettle.Stock.Baskets;

namespace Refettle.Sheets.Tests.Suppliers;

public sealed class OrderListTests
{
    [Fact]
    public void An_order_list_is_read_back_as_it_was_written()
    {
        var shelf = new Shelf
        { Lists = [new("Harbour; \"Rubber\"", "EUR", new(2026, 3, 1), [new("4410-22", "=bush, rear", new(3.20m), 2, 2, 10)])] };
        Need[] needs =
        [
            new("estate", "part bush", "4410-22", "", 3, new(2026, 5, 1), NeedReason.Asked, null, ""),
            new("estate", "joint foot", null, "bolt M12x1.25 class 8.8", 2, null, NeedReason.SingleUse, null, ""),
        ];
        var basket = BasketPlanner.Of(shelf, needs, new(2026, 3, 1), 0.8);
        using var csv = new CsvReader(new StringReader(OrderListWriter.Write(basket)), CultureInfo.InvariantCulture);
        var rows = csv.GetRecords<dynamic>()
            .Select(row => ((IDictionary<string, object>)row).Values.Select(value => (string)value).ToArray()).ToList();
        Assert.Equal(["4410-22", "'=bush, rear", "4", "Harbour; \"Rubber\"", "12.80", "EUR", "2026-04-15", "2026-05-01",
            "estate part bush"], rows[0]);
        Assert.Equal(["", "bolt M12x1.25 class 8.8", "2", "", "", "", "", "", "estate joint foot"], rows[1]);
    }
}
