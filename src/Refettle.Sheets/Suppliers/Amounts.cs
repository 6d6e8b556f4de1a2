using System.Globalization;
using System.Text.RegularExpressions;
using Refettle.Sheets.Tree;

namespace Refettle.Sheets.Suppliers;

/// <summary>Reads counts, times and units of a supplier's list.</summary>
internal static partial class Amounts
{
    private static readonly string[] Pieces = ["", "each", "ea", "pc", "pcs", "piece", "pieces", "unit", "1", "st", "stk"];

    /// <summary>Whether the unit is a piece: metres and kilograms are not counted here.</summary>
    public static bool IsPiece(string unit) => Pieces.Contains(unit.ToLowerInvariant().TrimEnd('.'));

    /// <summary>A whole number, 1 or more; 1 for an empty cell, null after a fault.</summary>
    public static int? Count(Cell cell, int line, int column, string what, FaultList faults)
    {
        if (cell.Text.Length == 0)
            return 1;
        if (int.TryParse(FirstCount().Match(cell.Text).Groups["count"].Value, NumberStyles.None, CultureInfo.InvariantCulture,
            out var count) && count is >= 1 and <= 100_000 && (cell.Number is null || cell.Number == count))
            return count;
        faults.Add(line, column + 1, what, $"\"{cell.Text}\" is not a count", "Give a whole number, 1 or more");
        return null;
    }

    /// <summary>Days: <c>10</c>, <c>10 days</c>, <c>2 weeks</c>, <c>2-3 weeks</c> (the later end). Null for
    /// an empty cell, or after a fault.</summary>
    /// <param name="inWeeks">Whether the header says weeks.</param>
    public static int? Days(Cell cell, int line, int column, bool inWeeks, FaultList faults)
    {
        if (cell.Text.Length == 0)
            return null;
        var match = Time().Match(cell.Text.ToLowerInvariant());
        var days = match.Success
            ? decimal.Parse(match.Groups["last"].Success ? match.Groups["last"].Value : match.Groups["first"].Value,
                CultureInfo.InvariantCulture) * PerUnit(match.Groups["unit"].Value, inWeeks)
            : -1;
        if (days is >= 0 and <= 3_650)
            return (int)Math.Ceiling(days);
        faults.Add(line, column + 1, "lead time", $"\"{cell.Text}\" is not a time",
            "Write days or weeks, such as 10 or 2-3 weeks, or leave the cell empty");
        return null;
    }

    private static int PerUnit(string unit, bool inWeeks) =>
        unit.Length == 0 ? inWeeks ? 7 : 1 : unit[0] == 'w' ? 7 : unit[0] == 'm' ? 30 : 1;

    /// <summary>Nothing that may be thousands or a fraction: which, no cell tells by itself.</summary>
    [GeneratedRegex(@"(?<![\d.,]|\d\s)(?<count>\d+)(?:[.,]0{1,2})?(?![.,]?\d|\s\d{3}(?!\d))")]
    private static partial Regex FirstCount();

    [GeneratedRegex(@"^(?:about|approx\.?|ca\.?|~)?\s*(?<first>\d{1,4}(?:\.\d)?)\s*(?:(?:-|–|to)\s*(?<last>\d{1,4}(?:\.\d)?))?\s*(?:working\s+)?(?<unit>days?|d|weeks?|wks?|w|months?)?\.?$")]
    private static partial Regex Time();
}
