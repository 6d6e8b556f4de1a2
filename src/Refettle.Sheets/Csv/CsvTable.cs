using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;
using Refettle.Sheets.Tree;

namespace Refettle.Sheets.Csv;

/// <summary>The rows of a CSV file as keys and values. The column of a place is the number of the cell in its row.</summary>
internal sealed class CsvTable
{
    private const int MostRows = 200_000;

    private readonly FaultList _faults;
    private readonly string[] _columns;
    private string[] _header = [];

    private CsvTable(string[] columns, FaultList faults) => (_columns, _faults) = (columns, faults);

    /// <summary>Reads the rows below the header; cells left empty are left out.</summary>
    /// <param name="columns">The names that the header may have.</param>
    public static List<Mapping> Read(string text, string[] columns, FaultList faults)
    {
        var good = FileText.Check(text, faults.File);
        foreach (var fault in good.Faults)
            faults.Add(fault);
        return good.IsGood ? new CsvTable(columns, faults).Rows(good.Value) : [];
    }

    private List<Mapping> Rows(string text)
    {
        var rows = new List<Mapping>();
        using var parser = new CsvParser(new StringReader(text), Configuration(text));
        if (!Try(parser))
        {
            _faults.Add(1, 1, "file", "the file is empty",
                $"Begin with a row of column names, such as {string.Join(", ", _columns.Take(4))}");
            return rows;
        }

        _header = [.. parser.Record!.Select(name => name.Trim().ToLowerInvariant())];
        CheckHeader();
        for (var line = parser.RawRow + 1; Try(parser); line = parser.RawRow + 1)
        {
            if (rows.Count == MostRows)
            {
                _faults.Add(line, 1, "file", $"there are more than {MostRows:N0} rows", "Split the file");
                break;
            }

            if (Row(parser.Record!, line) is { Pairs.Count: > 0 } row)
                rows.Add(row);
        }

        return rows;
    }

    /// <summary>Goes to the next row; a row that breaks the form ends the reading.</summary>
    private bool Try(CsvParser parser)
    {
        try
        {
            return parser.Read();
        }
        catch (Exception fault) when (fault is CsvHelperException)
        {
            _faults.Add(parser.RawRow, 1, "file", "a cell is too long or its quotes are not closed",
                "Look at the quotes in this row and just above");
            return false;
        }
    }

    private CsvConfiguration Configuration(string text) => new(CultureInfo.InvariantCulture)
    {
        Delimiter = Delimiter(text),
        IgnoreBlankLines = false,
        MaxFieldSize = Limits.ScalarLength,
        BadDataFound = bad => _faults.Add(bad.Context.Parser!.RawRow, 1, "file", "a quote stands inside a cell",
            "Put the cell into quotes and double the quotes in it"),
    };

    /// <summary>The one of comma, semicolon and tab that the first line has most of.</summary>
    private static string Delimiter(string text)
    {
        var first = text.AsSpan(0, text.AsSpan().IndexOfAny('\n', '\r') is var end && end < 0 ? text.Length : end);
        var (comma, semicolon, tab) = (first.Count(','), first.Count(';'), first.Count('\t'));
        return tab > Math.Max(comma, semicolon) ? "\t" : semicolon > comma ? ";" : ",";
    }

    private void CheckHeader()
    {
        for (var i = 0; i < _header.Length; i++)
        {
            if (_header[i].Length == 0)
                continue;
            if (!_columns.Contains(_header[i]))
                _faults.Add(1, i + 1, "header", $"\"{_header[i]}\" is not a column here",
                    _faults.Suggest(_header[i], _columns, $"Known are {string.Join(", ", _columns)}."));
            else if (Array.IndexOf(_header, _header[i]) < i)
                _faults.Add(1, i + 1, "header", $"the column \"{_header[i]}\" is there twice", "Keep one of them");
        }
    }

    private Mapping Row(string[] cells, int line)
    {
        var pairs = new List<Pair>();
        for (var i = 0; i < cells.Length; i++)
        {
            var text = cells[i].Trim();
            if (text.Length == 0)
                continue;
            if (i >= _header.Length)
                _faults.Add(line, i + 1, "row", $"\"{text}\" stands beyond the last column", "Put a cell with commas in it into quotes");
            else if (_columns.Contains(_header[i]) && pairs.All(pair => pair.Key.Text != _header[i]))
                pairs.Add(new(new(line, i + 1, _header[i], Quoted: true), new Scalar(line, i + 1, Plain(text), Quoted: true)));
        }

        return new(line, 1, pairs);
    }

    /// <summary>Spreadsheets write truth values in capitals.</summary>
    private static string Plain(string text) => text is "TRUE" or "FALSE" ? text.ToLowerInvariant() : text;
}
