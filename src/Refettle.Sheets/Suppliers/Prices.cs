using System.Globalization;
using System.Text.RegularExpressions;
using Refettle.Sheets.Tree;

namespace Refettle.Sheets.Suppliers;

/// <summary>Reads the prices of a column. Whether a comma or a point parts the cents is what the whole column
/// shows, never a guess at one cell.</summary>
internal sealed partial class Prices
{
    private static readonly Dictionary<string, string> Signs = new() { ["€"] = "EUR", ["£"] = "GBP", ["US$"] = "USD", ["¥"] = "JPY" };

    private readonly char? _point;
    private readonly FaultList _faults;

    /// <param name="cells">All cells of the column with their lines.</param>
    public Prices(IReadOnlyCollection<(int Line, Cell Cell)> cells, int column, FaultList faults)
    {
        _faults = faults;
        var texts = cells.Where(cell => cell.Cell.Number is null).Select(cell => (cell.Line, Text: Digits(cell.Cell.Text))).ToList();
        var (comma, point) =
            (texts.Where(cell => CommaCents().IsMatch(cell.Text)).ToList(), texts.Where(cell => PointCents().IsMatch(cell.Text)).ToList());
        if (comma.Count > 0 && point.Count > 0)
            faults.Add(Math.Max(comma[0].Line, point[0].Line), column + 1, "price",
                $"some prices part the cents with a comma ({comma[0].Text}), some with a point ({point[0].Text})",
                "Write them all in one way");
        _point = comma.Count > 0 ? ',' : point.Count > 0 ? '.' : null;
    }

    /// <summary>The ISO 4217 code in a text; null when it names none.</summary>
    public static string? CurrencyIn(string text) =>
        Signs.Where(sign => text.Contains(sign.Key, StringComparison.Ordinal)).Select(sign => sign.Value).FirstOrDefault()
        ?? (Code().Match(text) is { Success: true } code ? code.Value : null);

    /// <summary>The price; null for an empty cell or after a fault.</summary>
    public Money? Read(Cell cell, int line, int column)
    {
        if (cell.Number is { } number)
            return Checked(number, cell, line, column);
        var digits = Digits(cell.Text);
        if (cell.Text.Length == 0 || cell.Text is "-" or "–")
            return null;
        if (_point is null && Grouped().IsMatch(digits))
            _faults.Add(line, column + 1, "price", $"\"{cell.Text}\" may be thousands or cents, and no other price tells which",
                "Write it with cents, such as 1234.00");
        else if (decimal.TryParse(Plain(digits), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value))
            return Checked(value, cell, line, column);
        else
            _faults.Add(line, column + 1, "price", $"\"{cell.Text}\" is not a price", "Write a figure, or leave the cell empty");
        return null;
    }

    private Money? Checked(decimal value, Cell cell, int line, int column)
    {
        if (value is >= 0 and <= 10_000_000)
            return new Money(value);
        _faults.Add(line, column + 1, "price", $"\"{cell.Text}\" is out of range", "Give 0 or more");
        return null;
    }

    private string Plain(string digits) => _point == ','
        ? digits.Replace(".", "", StringComparison.Ordinal).Replace(',', '.')
        : digits.Replace(",", "", StringComparison.Ordinal);

    /// <summary>Without the currency and without blanks and apostrophes between thousands.</summary>
    private static string Digits(string text) =>
        Around().Replace(text, "").Replace("'", "", StringComparison.Ordinal).Replace(" ", "", StringComparison.Ordinal)
            .Replace("\u00a0", "", StringComparison.Ordinal);

    [GeneratedRegex(@"\b[A-Z]{3}\b")]
    private static partial Regex Code();

    [GeneratedRegex(@"\b[A-Z]{3}\b|US\$|[€£¥]")]
    private static partial Regex Around();

    /// <summary>Thousands stand in threes behind one to three figures that do not begin with a nought: what stands
    /// otherwise is parted from its cents.</summary>
    [GeneratedRegex(@",\d{1,2}$|,\d{4,}$|^0\d*,|\d{4},|\.\d{3},")]
    private static partial Regex CommaCents();

    [GeneratedRegex(@"\.\d{1,2}$|\.\d{4,}$|^0\d*\.|\d{4}\.|,\d{3}\.")]
    private static partial Regex PointCents();

    [GeneratedRegex(@"^\d{1,3}[.,]\d{3}$")]
    private static partial Regex Grouped();
}
