using System.Globalization;
using System.IO.Compression;
using System.Text;
using CsvHelper;
using CsvHelper.Configuration;
using ExcelDataReader;
using ExcelDataReader.Exceptions;
using Refettle.Sheets.Tree;

namespace Refettle.Sheets.Suppliers;

/// <summary>A cell as text, and as the number that a spreadsheet keeps it as.</summary>
/// <param name="IsDate">The spreadsheet made a day of it.</param>
internal readonly record struct Cell(string Text, decimal? Number = null, bool IsDate = false);

/// <summary>A row of cells.</summary>
internal sealed record GridRow(int Line, Cell[] Cells)
{
    /// <param name="column">From 0.</param>
    public Cell At(int? column) => column is { } place && place < Cells.Length ? Cells[place] : new("");
}

/// <summary>The rows of a table, from CSV or from the first sheet of an XLSX workbook. What it is shows in
/// its first bytes, not in its name.</summary>
internal static class Grid
{
    private const int MostRows = 200_000;
    private const int MostColumns = 200;

    /// <summary>The reader of workbooks asks for an old 8-bit encoding even where it needs none.</summary>
    static Grid() => Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);

    public static List<GridRow> Read(byte[] bytes, FaultList faults) => bytes switch
    {
        [(byte)'P', (byte)'K', ..] => Workbook(bytes, faults),
        [0xD0, 0xCF, 0x11, 0xE0, ..] => Refused(faults, "it is a workbook of the old kind (XLS)"),
        _ when faults.File.EndsWith(".xlsx", StringComparison.OrdinalIgnoreCase) =>
            Refused(faults, "it is called a workbook (XLSX) and does not begin like one: cut off, or something else"),
        _ => Text(bytes, faults),
    };

    private static List<GridRow> Refused(FaultList faults, string found)
    {
        faults.Add(1, 1, "file", found, "Open it in a spreadsheet and save it as XLSX or CSV");
        return [];
    }

    private static List<GridRow> Text(byte[] bytes, FaultList faults)
    {
        var text = FileText.Decode(bytes, faults.File);
        foreach (var fault in text.Faults)
            faults.Add(fault);
        var rows = new List<GridRow>();
        if (!text.IsGood)
            return rows;
        try
        {
            using var parser = new CsvParser(new StringReader(text.Value), new CsvConfiguration(CultureInfo.InvariantCulture)
            {
                DetectDelimiter = true,
                DetectDelimiterValues = [",", ";", "\t"],
                IgnoreBlankLines = false,
                MaxFieldSize = Limits.ScalarLength,
                BadDataFound = bad => faults.Add(bad.Context.Parser!.RawRow, 1, "file", "a quote stands inside a cell",
                    "Put the cell into quotes and double the quotes in it"),
            });
            for (var line = 1; rows.Count < MostRows && parser.Read(); line = parser.RawRow + 1)
                rows.Add(new(line, [.. parser.Record!.Select(cell => new Cell(cell.Trim()))]));
        }
        catch (CsvHelperException)
        {
            faults.Add(rows.Count + 1, 1, "file", "a cell is too long or its quotes are not closed",
                "Look at the quotes in this row and just above");
        }

        return rows;
    }

    private static List<GridRow> Workbook(byte[] bytes, FaultList faults)
    {
        var rows = new List<GridRow>();
        try
        {
            if (Unpacked(bytes) > Limits.Bytes)
            {
                faults.Add(1, 1, "file", "unpacked it is too large",
                    $"Save the one sheet that matters: at most {Limits.Bytes / 1024 / 1024} MB are read");
                return rows;
            }

            using var reader = ExcelReaderFactory.CreateOpenXmlReader(new MemoryStream(bytes));
            for (var line = 1; rows.Count < MostRows && reader.Read(); line++)
                rows.Add(new(line, Cells(reader)));
        }
        catch (Exception trouble) when (trouble is ExcelReaderException or InvalidDataException or System.Xml.XmlException
            or FormatException
            or ArgumentException or InvalidOperationException or NullReferenceException or IndexOutOfRangeException or KeyNotFoundException
            or OverflowException or IOException)
        {
            // The library answers a broken workbook with whatever it stumbled over.
            faults.Add(1, 1, "file", "it begins like an XLSX workbook and cannot be read as one",
                "Open it in a spreadsheet and save it again as XLSX or CSV UTF-8");
        }

        return rows;
    }

    /// <summary>Empty ones at the end are left out: a single cell far down and far right would make millions of them.</summary>
    private static Cell[] Cells(IExcelDataReader reader)
    {
        var count = Math.Min(reader.FieldCount, MostColumns);
        while (count > 0 && reader.GetValue(count - 1) is null)
            count--;
        return [.. Enumerable.Range(0, count).Select(column => Of(reader.GetValue(column)))];
    }

    private static long Unpacked(byte[] bytes)
    {
        using var zip = new ZipArchive(new MemoryStream(bytes));
        return zip.Entries.Sum(entry => entry.Length);
    }

    private static Cell Of(object? value) => value switch
    {
        null => new(""),
        DateTime day => new(day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), IsDate: true),
        double number when Math.Abs(number) < 1e15 =>
            new(((decimal)number).ToString("0.############", CultureInfo.InvariantCulture), (decimal)number),
        _ => new((Convert.ToString(value, CultureInfo.InvariantCulture) ?? "").Trim()),
    };
}
