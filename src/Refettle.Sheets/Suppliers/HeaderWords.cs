using Refettle.Sheets.Tree;

namespace Refettle.Sheets.Suppliers;

/// <summary>What a column of a supplier's list says.</summary>
internal enum ListColumn
{
    Number,
    Name,
    Price,
    Currency,
    Unit,
    Minimum,
    Multiple,
    Lead,
}

/// <summary>Where the columns of a list are, by the words of its header.</summary>
/// <param name="Row">Place of the header among the rows.</param>
/// <param name="Currency">A currency that the price column names in its header: <c>Price (GBP)</c>.</param>
internal sealed record ListHeader(int Row, IReadOnlyDictionary<ListColumn, int> Columns, (string Code, int Column)? Currency)
{
    private const int FurthestDown = 40;

    /// <summary>The longest words are tried first, so that <c>pack price</c> is not taken for a pack.</summary>
    private static readonly (ListColumn Column, string[] Words)[] Known =
    [
        (ListColumn.Number,
            ["part number", "part no", "part nr", "article number", "article no", "article", "item number", "item no", "item code",
                "order number", "order code", "stock code", "sku", "reference", "ref", "number", "code", "no"]),
        (ListColumn.Name, ["description", "designation", "name", "title", "part"]),
        (ListColumn.Price, ["unit price", "price each", "net price", "list price", "price", "each", "net"]),
        (ListColumn.Currency, ["currency", "cur"]),
        (ListColumn.Unit, ["unit of measure", "unit", "uom", "sold by", "per"]),
        (ListColumn.Minimum, ["minimum order", "minimum quantity", "min order", "min qty", "minimum", "moq", "min"]),
        (ListColumn.Multiple, ["pack size", "pack quantity", "pack qty", "multiple", "multiples", "pack", "box of"]),
        (ListColumn.Lead, ["lead time", "lead days", "delivery time", "delivery days", "delivery", "lead", "days", "weeks"]),
    ];

    /// <summary>The first row, not too far down, that names a number and a price or a name; null
    /// after a fault when there is none.</summary>
    public static ListHeader? Find(IReadOnlyList<GridRow> rows, FaultList faults)
    {
        for (var row = 0; row < Math.Min(rows.Count, FurthestDown); row++)
        {
            var found = rows[row].Cells.Select((cell, column) => (Column: Meaning(cell.Text), At: column, cell.Text))
                .Where(one => one.Column is not null).ToList();
            if (!found.Exists(one => one.Column == ListColumn.Number)
                || !found.Exists(one => one.Column is ListColumn.Price or ListColumn.Name))
                continue;
            foreach (var twice in found.GroupBy(one => one.Column).Where(group => group.Count() > 1))
                faults.Add(rows[row].Line, twice.Last().At + 1, "header",
                    $"\"{twice.First().Text}\" and \"{twice.Last().Text}\" both read as {twice.Key.ToString()!.ToLowerInvariant()}",
                    "Rename or delete the column that is not meant");
            var columns = found.GroupBy(one => one.Column!.Value).ToDictionary(group => group.Key, group => group.First().At);
            var price = columns.TryGetValue(ListColumn.Price, out var at) ? (Prices.CurrencyIn(rows[row].Cells[at].Text), at + 1) : default;
            return new(row, columns, price.Item1 is { } code ? (code, price.Item2) : null);
        }

        faults.Add(1, 1, "header", "no row names its columns",
            "Give one row with words such as Part number, Description, Price, Currency, Minimum order, Pack, Lead time");
        return null;
    }

    private static ListColumn? Meaning(string text)
    {
        var words = Words(text);
        if (words.Length is 0 or > 60)
            return null;
        return Known.SelectMany(known => known.Words, (known, word) => (known.Column, word)).OrderByDescending(pair => pair.word.Length)
            .Where(pair => words == pair.word || words.StartsWith(pair.word + " ", StringComparison.Ordinal))
            .Select(pair => (ListColumn?)pair.Column).FirstOrDefault();
    }

    private static string Words(string text) =>
        string.Join(' ',
            new string([.. text.ToLowerInvariant().Select(c => char.IsLetterOrDigit(c) ? c : ' ')])
                .Split(' ', StringSplitOptions.RemoveEmptyEntries));
}
