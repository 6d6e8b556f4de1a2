using Refettle.Logbook;
using Refettle.Sheets.Tree;

namespace Refettle.Sheets.Suppliers;

/// <summary>Reads a supplier's list from CSV or XLSX. Columns are found by the words of the header,
/// wherever they stand; a fault's column is the number of the cell in its row.</summary>
public static class SupplierListReader
{
    /// <param name="currency">The currency the prices are taken to be in; what the list itself names must agree.</param>
    /// <returns>The entry, with notes about rows that are left out; or all faults.</returns>
    public static Result<OffersListed> Read(byte[] file, string name, string supplier, string currency, DateOnly on)
    {
        var faults = new FaultList(name);
        var rows = Grid.Read(file, faults);
        if (rows.Count == 0 && !faults.HasErrors)
            faults.Add(1, 1, "file", "the file is empty", "Give a list with a row of column names");
        var header = faults.HasErrors ? null : ListHeader.Find(rows, faults);
        var offers = header is null ? [] : new SupplierRows(header, rows, currency, faults).Offers();
        if (header is not null && offers.Count == 0 && !faults.HasErrors)
            faults.Add(rows[header.Row].Line, 1, "file", "there is no row with a part number below the header",
                "Look whether this is the list; of a workbook the first sheet is read");
        return faults.HasErrors
            ? Result<OffersListed>.Bad(faults.ToList())
            : Result<OffersListed>.Good(new(supplier, currency, offers.ToValueList(), on), faults.ToList());
    }
}

/// <summary>The rows below the header.</summary>
internal sealed class SupplierRows(ListHeader header, IReadOnlyList<GridRow> rows, string currency, FaultList faults)
{
    private const int MostLines = 10;

    private readonly Dictionary<string, int> _lines = [];

    public List<Offer> Offers()
    {
        CheckCurrency(header.Currency?.Code, rows[header.Row].Line, header.Currency?.Column ?? 1);
        var below = rows.Skip(header.Row + 1).ToList();
        Unnumbered([.. below.Where(row => At(row, ListColumn.Number).Text.Length == 0
            && (At(row, ListColumn.Name).Text + At(row, ListColumn.Price).Text).Length > 0).Select(row => row.Line)]);
        var prices = new Prices([.. below.Select(row => (row.Line, At(row, ListColumn.Price)))], Column(ListColumn.Price), faults);
        return [.. below.Select(row => Offer(row, prices)).OfType<Offer>()];
    }

    private Offer? Offer(GridRow row, Prices prices)
    {
        var number = At(row, ListColumn.Number);
        if (number.Text.Length == 0 || !IsNumber(number, row.Line))
            return null;
        var id = PartNumber.Canonical(number.Text);
        if (!_lines.TryAdd(id, row.Line))
            return Left(row.Line, ListColumn.Number, $"{id} is on line {_lines[id]} already", "The first one counts.");
        if (!Amounts.IsPiece(At(row, ListColumn.Unit).Text))
            return Left(row.Line, ListColumn.Unit, $"{id} is sold by \"{At(row, ListColumn.Unit).Text}\"",
                "Only pieces are counted: the row is left out.");
        var price = prices.Read(At(row, ListColumn.Price), row.Line, Column(ListColumn.Price));
        CheckCurrency(Prices.CurrencyIn(At(row, ListColumn.Price).Text), row.Line, Column(ListColumn.Price) + 1);
        CheckCurrency(At(row, ListColumn.Currency).Text is { Length: > 0 } named
            ? Prices.CurrencyIn(named.ToUpperInvariant()) ?? named
            : null, row.Line, Column(ListColumn.Currency) + 1);
        var lead = Amounts.Days(At(row, ListColumn.Lead), row.Line, Column(ListColumn.Lead),
            HeaderOf(ListColumn.Lead).Contains("week", StringComparison.OrdinalIgnoreCase), faults);
        return Count(row, ListColumn.Minimum, "minimum order") is { } minimum && Count(row, ListColumn.Multiple, "pack") is { } multiple
            ? new(id, At(row, ListColumn.Name).Text, price, minimum, multiple, lead) : null;
    }

    /// <summary>Headings between the rows are like this too: one note for all.</summary>
    private void Unnumbered(List<int> lines)
    {
        if (lines.Count > 0)
            Left(lines[0], ListColumn.Number,
                $"{lines.Count} {(lines.Count == 1 ? "row has" : "rows have")} no part number: line {string.Join(", ", lines.Take(MostLines))}{(lines.Count > MostLines ? " …" : "")}",
                "What has none is left out. Write it in if these are pieces.");
    }

    private bool IsNumber(Cell number, int line)
    {
        if (number.IsDate)
            faults.Add(line, Column(ListColumn.Number) + 1, "part number", $"the spreadsheet has made a day of it ({number.Text})",
                "Format the column as text and write the number again");
        else if (!PartNumber.IsValid(PartNumber.Canonical(number.Text)))
            faults.Add(line, Column(ListColumn.Number) + 1, "part number", $"\"{Short(number.Text)}\" is not a part number",
                $"Give 1 to {PartNumber.MaxLength} characters");
        else
            return true;
        return false;
    }

    private int? Count(GridRow row, ListColumn column, string what) =>
        Amounts.Count(At(row, column), row.Line, Column(column), what, faults);

    private void CheckCurrency(string? named, int line, int column)
    {
        if (named is not null && named != currency)
            faults.Add(line, column, "currency", $"the list has {Short(named)}, and {currency} was said",
                "Say the currency of the list, or change it in the list");
    }

    private Offer? Left(int line, ListColumn column, string found, string mend)
    {
        faults.Add(new Fault("row", found, mend) { Line = line, Column = Column(column) + 1, Severity = Severity.Note });
        return null;
    }

    private Cell At(GridRow row, ListColumn column) => row.At(header.Columns.TryGetValue(column, out var at) ? at : null);

    private int Column(ListColumn column) => header.Columns.TryGetValue(column, out var at) ? at : 0;

    private string HeaderOf(ListColumn column) => header.Columns.TryGetValue(column, out var at) ? rows[header.Row].Cells[at].Text : "";

    private static string Short(string text) => text.Length <= 40 ? text : text[..40] + "…";
}
