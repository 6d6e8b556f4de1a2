using System.CommandLine;
using Refettle.Cli.Commands;
using Refettle.Sheets.Suppliers;

namespace Refettle.Cli.Verbs.Stock;

/// <summary><c>stock import</c>: a supplier's list.</summary>
internal static class ImportVerb
{
    public static Command Make(Desk desk)
    {
        var file = new Argument<string>("file")
        { Description = "The list, as CSV or XLSX; its columns are found by the words of its header." };
        var supplier = new Option<string>("--supplier") { Description = "Who sells it.", Required = true };
        var currency = new Option<string?>("--currency") { Description = "The currency of its prices; by default the car's." };
        var on = StockWords.Day(desk, "--on", "The day of the list; by default today.");
        return new Command("import",
            "Takes a supplier's list in: numbers, prices, minimum orders, lead times. It replaces that supplier's older ones.") { file,
                supplier, currency, on }
            .Answers(desk,
                parsed => OpenShelf.With(desk, parsed, open => Reply.To(TextFile.Bytes(desk.PathOf(parsed.GetRequiredValue(file))), bytes =>
                Reply.To(SupplierListReader.Read(bytes, parsed.GetRequiredValue(file), parsed.GetRequiredValue(supplier).Trim(),
                    parsed.GetValue(currency) ?? open.Open.Car.Currency, parsed.GetValue(on) ?? open.Today), listed =>
                    open.Record([listed], $"{listed.Offers.Count} numbers of {listed.Supplier}, in {listed.Currency}.")))));
    }
}
