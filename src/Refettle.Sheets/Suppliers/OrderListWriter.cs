using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;
using Refettle.Stock.Baskets;

namespace Refettle.Sheets.Suppliers;

/// <summary>Writes what is to be ordered as CSV, one line a purchase, for a spreadsheet or an e-mail.</summary>
public static class OrderListWriter
{
    private static readonly string[] Columns =
        ["Part number", "Description", "Count", "Supplier", "Price", "Currency", "Order by", "Needed by", "For"];

    /// <summary>A cell that a spreadsheet would take for a formula is written so that it is not.</summary>
    public static string Write(Basket basket)
    {
        var text = new StringWriter { NewLine = "\r\n" };
        using var csv = new CsvWriter(text,
            new CsvConfiguration(CultureInfo.InvariantCulture)
            { InjectionOptions = InjectionOptions.Escape, InjectionEscapeCharacter = '\'' });
        Row(csv, Columns);
        foreach (var one in basket.Purchases)
            Row(csv, one.Number, one.Name, $"{one.Count}", one.Supplier ?? "", one.Cost is { } cost ? $"{cost}" : "", one.Currency ?? "",
                Day(one.OrderBy), Day(one.NeededBy), string.Join("; ", one.For));
        foreach (var group in basket.Unnumbered.GroupBy(need => need.What).OrderBy(group => group.Key, StringComparer.Ordinal))
            Row(csv, "", group.Key, $"{group.Sum(need => need.Count)}", "", "", "", "", Day(group.Min(need => need.By)),
                string.Join("; ", group.Select(need => $"{need.Car} {need.Thing}")));
        csv.Flush();
        return text.ToString();
    }

    private static void Row(CsvWriter csv, params ReadOnlySpan<string> cells)
    {
        foreach (var cell in cells)
            csv.WriteField(cell);
        csv.NextRecord();
    }

    private static string Day(DateOnly? day) => day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "";
}
