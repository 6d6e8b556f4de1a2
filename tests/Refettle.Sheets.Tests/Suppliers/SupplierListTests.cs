using System.IO.Compression;
using System.Text;
using CsCheck;
using MiniExcelLibs;
using Refettle.Sheets.Suppliers;

namespace Refettle.Sheets.Tests.Suppliers;

/// <summary>Lists as suppliers send them, invented. The XLSX files are written by another library than the one that reads them.</summary>
public sealed class SupplierListTests
{
    private const string Csv = """
        Harbour Rubber, list of spring 2026,,,,
        ,,,,,
        Article No.,Description,Unit Price (EUR),Min. order,Pack size,Lead time
        4410-22,Shackle bush,3.20,2,2,10 days
        77-1 a,"Seal, rear",1.05,,,2-3 weeks
        99,Hose,,1,1,
        """;

    [Fact]
    public void Columns_are_found_by_their_words_and_rows_above_the_header_do_not_matter()
    {
        var listed = Read(Csv).Value;
        Assert.Equal(
            [
                new Offer("4410-22", "Shackle bush", new(3.20m), 2, 2, 10),
                new Offer("77-1 A", "Seal, rear", new(1.05m), 1, 1, 21),
                new Offer("99", "Hose", null, 1, 1, null),
            ],
            listed.Offers);
        Assert.Equal(("Harbour Rubber", "EUR"), (listed.Supplier, listed.Currency));
    }

    [Fact]
    public void Rows_without_a_part_number_are_told_in_one_note()
    {
        var listed = Read("Part number,Name,Price\n4410-22,Shackle bush,3.20\n,,\nSeals,,\n,Rear seal,2.00\n,Clip,0.10\n");
        var note = Assert.Single(listed.Faults);
        Assert.Equal((Severity.Note, 5, "2 rows have no part number: line 5, 6"), (note.Severity, note.Line, note.Found));
        Assert.Equal(2, listed.Value.Offers.Count);
    }

    [Fact]
    public void A_workbook_is_read_like_a_table()
    {
        var rows = new List<Dictionary<string, object?>>
        {
            new() { ["Part Number"] = "4410-22", ["Name"] = "Shackle bush", ["Price each"] = 3.2, ["MOQ"] = 2, ["Lead time (weeks)"] = 2 },
            new() { ["Part Number"] = 7712.0, ["Name"] = "Seal", ["Price each"] = 1.05, ["MOQ"] = null, ["Lead time (weeks)"] = null },
        };
        Assert.Equal([new Offer("4410-22", "Shackle bush", new(3.2m), 2, 1, 14), new Offer("7712", "Seal", new(1.05m), 1, 1, null)],
            Read(Workbook(rows)).Value.Offers);
    }

    [Fact]
    public void One_cell_in_the_last_corner_of_a_workbook_fills_no_memory()
    {
        const string sheet =
            "<worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><sheetData><row r=\"1\"><c r=\"A1\" t=\"str\"><v>Part no</v></c></row><row r=\"1048576\"><c r=\"XFD1048576\"><v>1</v></c></row></sheetData></worksheet>";
        var file = Replaced(Workbook([new() { ["Part no"] = "A-1" }]), "xl/worksheets/sheet1.xml", sheet);
        var before = GC.GetAllocatedBytesForCurrentThread();
        Assert.Contains("no row names its columns",
            Assert.Single(SupplierListReader.Read(file, "list", "Harbour Rubber", "EUR", new(2026, 3, 1)).Faults).Found,
            StringComparison.Ordinal);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 150_000_000);
    }

    private static byte[] Replaced(byte[] workbook, string name, string text)
    {
        var file = new MemoryStream();
        file.Write(workbook);
        using (var zip = new ZipArchive(file, ZipArchiveMode.Update, leaveOpen: true))
        {
            zip.GetEntry(name)!.Delete();
            using var part = zip.CreateEntry(name).Open();
            part.Write(Encoding.UTF8.GetBytes(text));
        }

        return file.ToArray();
    }

    [Theory]
    [InlineData("Part no;Price\nA-1;1.234,50\nA-2;3,2\n", 1234.50, 3.2)]
    [InlineData("Part no;Price\nA-1;€ 1'234.50\nA-2;3\n", 1234.50, 3)]
    [InlineData("Part no;Price\nA-1;0,0450\nA-2;3\n", 0.045, 3)]
    [InlineData("Part no;Price\nA-1;0,125\nA-2;3,250\n", 0.125, 3.25)]
    [InlineData("Part no;Price\nA-1;1234,567\nA-2;3\n", 1234.567, 3)]
    [InlineData("Part no;Price\nA-1;0.0450\nA-2;1,234,567\n", 0.045, 1234567)]
    [InlineData("Part no\tPrice\nA-1\tEUR 1,234.50\nA-2\t1,234\n", 1234.50, 1234)]
    public void The_column_tells_whether_a_comma_parts_cents(string text, double first, double second) =>
        Assert.Equal([(decimal)first, (decimal)second], Read(text).Value.Offers.Select(offer => offer.Each!.Value.Amount));

    [Theory]
    [InlineData("Part no,Price\nA-1,\"1,234\"\n", 2, 2, "may be thousands or cents")]
    [InlineData("Part no,Price\nA-1,cheap\n", 2, 2, "is not a price")]
    [InlineData("Part no,Price\nA-1,1.20\nA-2,\"1,30\"\n", 3, 2, "some prices part the cents")]
    [InlineData("Part no,Price (GBP)\nA-1,1.20\n", 1, 2, "the list has GBP")]
    [InlineData("Part no,Price,Currency\nA-1,1.20,SEK\n", 2, 3, "the list has SEK")]
    [InlineData("Part no,Price\nA-1,£1.20\n", 2, 2, "the list has GBP")]
    [InlineData("Part no,Price,Pack\nA-1,1.20,some\n", 2, 3, "is not a count")]
    [InlineData("Part no,Price,Pack\nA-1,1.20,\"1,000\"\n", 2, 3, "is not a count")]
    [InlineData("Part no,Price,Pack\nA-1,1.20,2 500\n", 2, 3, "is not a count")]
    [InlineData("Part no,Price,Pack\nA-1,1.20,2.5\n", 2, 3, "is not a count")]
    [InlineData("Part no,Price,Lead time\nA-1,1.20,soon\n", 2, 3, "is not a time")]
    [InlineData("Part no,Price\nA123456789012345678901234567890123456789012,1.20\n", 2, 1, "is not a part number")]
    [InlineData("Part no,Article,Price\nA-1,A-1,1.20\n", 1, 2, "both read as number")]
    [InlineData("Colour,Size\nred,4\n", 1, 1, "no row names its columns")]
    [InlineData("Part no,Price\n,\n", 1, 1, "no row with a part number below the header")]
    [InlineData("", 1, 1, "the file is empty")]
    public void A_fault_has_its_line_and_column(string text, int line, int column, string found) =>
        Assert.Contains(Read(text).Faults,
            fault => fault.Line == line && fault.Column == column && fault.Found.Contains(found, StringComparison.Ordinal)
                && fault.File == "list");

    [Fact]
    public void All_faults_are_told_at_once() => Assert.Equal(2, Read("Part no,Price\nA-1,cheap\nA-2,dear\nA-3,1.00\n").Faults.Count);

    [Fact]
    public void What_is_sold_by_the_metre_or_named_twice_is_left_out_with_a_note()
    {
        var read = Read("Part no,Price,Unit\nA-1,1.20,ea\nA-2,2.00,metre\nA-1,9.99,ea\n");
        Assert.Equal("A-1", Assert.Single(read.Value.Offers).Number);
        Assert.Equal([(3, Severity.Note), (4, Severity.Note)], read.Faults.Select(fault => (fault.Line, fault.Severity)));
    }

    [Fact]
    public void A_part_number_that_a_spreadsheet_made_a_day_of_is_found() =>
        Assert.Contains("has made a day of it",
            Assert.Single(Read(Workbook([new() { ["Part Number"] = new DateTime(2026, 2, 1), ["Price"] = 1.0 }])).Faults,
                fault => fault.Severity == Severity.Error).Found, StringComparison.Ordinal);

    [Fact]
    public void Broken_workbooks_are_refused_in_one_line()
    {
        var good = Workbook([new() { ["Part Number"] = "A-1", ["Price"] = 1.0 }]);
        Gen.Select(Gen.Int[0, good.Length - 1], Gen.Byte, Gen.Int[4, good.Length]).Sample((at, value, length) =>
        {
            var broken = good.ToArray();
            broken[at] = value;
            foreach (var bytes in new[] { broken, good[..length] })
            {
                var read = Read(bytes);
                Assert.True(read.IsGood || read.Faults.All(fault => fault.Line >= 1 && fault.Column >= 1 && fault.Mend.Length > 0));
            }
        }, iter: 300);
    }

    [Fact]
    public void Any_text_is_read_or_refused() =>
        Gen.String[Gen.Char["A1,;\t\n\" -€.partnoprice"], 0, 80].Sample(text => Assert.NotNull(Read("Part no,Price\n" + text)), iter: 1000);

    [Theory]
    [InlineData(new byte[] { 0xD0, 0xCF, 0x11, 0xE0, 0, 0 }, "list", "of the old kind (XLS)")]
    [InlineData(new byte[] { 7, 0, 1, 0 }, "list.xlsx", "does not begin like one")]
    public void What_is_no_workbook_is_called_none(byte[] bytes, string name, string found) =>
        Assert.Contains(found, Assert.Single(SupplierListReader.Read(bytes, name, "Harbour Rubber", "EUR", new(2026, 3, 1)).Faults).Found,
            StringComparison.Ordinal);

    private static Result<Logbook.OffersListed> Read(string text) => Read(Encoding.UTF8.GetBytes(text));

    private static Result<Logbook.OffersListed> Read(byte[] bytes) =>
        SupplierListReader.Read(bytes, "list", "Harbour Rubber", "EUR", new(2026, 3, 1));

    private static byte[] Workbook(List<Dictionary<string, object?>> rows)
    {
        using var stream = new MemoryStream();
        stream.SaveAs(rows);
        return stream.ToArray();
    }
}
