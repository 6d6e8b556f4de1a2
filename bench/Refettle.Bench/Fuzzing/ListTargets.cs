using System.IO.Compression;
using System.Text;
using Refettle.Sheets.Calendars;
using Refettle.Sheets.Suppliers;

namespace Refettle.Bench.Fuzzing;

/// <summary>Files of other programs: lists of suppliers, calendars.</summary>
internal static class ListTargets
{
    private static readonly DateOnly Day = new(2026, 3, 1);

    private static readonly string[] Tables =
    [
        "Article No.,Description,Unit Price (EUR),Min. order,Pack size,Lead time\n4410-22,Shackle bush,3.20,2,2,10 days\n77-1 a,\"Seal, rear\",1.05,,,2-3 weeks\n",
        "Part no;Price\nA-1;1.234,50\nA-2;€ 3,2\n",
    ];

    private static readonly string[] Calendars =
    [
        Calendar("DTSTART;TZID=Europe/Berlin:20260302T183000\nDTEND;TZID=Europe/Berlin:20260302T210000\nRRULE:FREQ=WEEKLY;BYDAY=MO,WE;UNTIL=20261224T000000Z\nEXDATE;TZID=Europe/Berlin:20260309T183000"),
        Calendar("DTSTART:20260307T090000Z\nDURATION:PT3H\nRRULE:FREQ=DAILY;INTERVAL=2;COUNT=9"),
    ];

    /// <summary>The least a workbook has (ECMA-376), part by part.</summary>
    private static readonly (string Name, string Text)[] Workbook =
    [
        ("[Content_Types].xml",
            "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\"><Default Extension=\"rels\" ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/><Override PartName=\"/xl/workbook.xml\" ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml\"/><Override PartName=\"/xl/worksheets/sheet1.xml\" ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml\"/></Types>"),
        ("_rels/.rels",
            "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\"><Relationship Id=\"r1\" Type=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships/officeDocument\" Target=\"xl/workbook.xml\"/></Relationships>"),
        ("xl/workbook.xml",
            "<workbook xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\" xmlns:r=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships\"><sheets><sheet name=\"List\" sheetId=\"1\" r:id=\"r1\"/></sheets></workbook>"),
        ("xl/_rels/workbook.xml.rels",
            "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\"><Relationship Id=\"r1\" Type=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet\" Target=\"worksheets/sheet1.xml\"/></Relationships>"),
        ("xl/worksheets/sheet1.xml",
            "<worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><dimension ref=\"A1:B2\"/><sheetData><row r=\"1\"><c r=\"A1\" t=\"inlineStr\"><is><t>Part no</t></is></c><c r=\"B1\" t=\"inlineStr\"><is><t>Price</t></is></c></row><row r=\"2\"><c r=\"A2\" t=\"inlineStr\"><is><t>A-1</t></is></c><c r=\"B2\"><v>3.2</v></c></row></sheetData></worksheet>"),
    ];

    public static IEnumerable<Target> All =>
    [
        Target.Texts("supplier tables", 400, Tables, text => Take(Encoding.UTF8.GetBytes(text))),
        new("supplier workbooks", 200, Changed),
        Target.Texts("calendars", 300, Calendars, text => SpellsReader.Read(text, "Europe/Berlin")),
    ];

    private static void Take(byte[] file) => SupplierListReader.Read(file, "list", "Harbour Rubber", "EUR", Day);

    /// <summary>One of its parts is changed, or one in four times the packed file.</summary>
    private static Trial Changed(Mutator mutator)
    {
        var part = mutator.Pick(Workbook);
        var file = Packed(
            Workbook.Select(one => one.Name == part.Name ? (one.Name, mutator.Change(one.Text, mutator.Pick(Workbook).Text)) : one));
        var changed = mutator.Toss(0.25) ? mutator.Change(Packed(Workbook)) : file;
        return new(changed, () => Take(changed));
    }

    private static byte[] Packed(IEnumerable<(string Name, string Text)> parts)
    {
        var file = new MemoryStream();
        using (var zip = new ZipArchive(file, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, text) in parts)
            {
                using var part = zip.CreateEntry(name, CompressionLevel.Fastest).Open();
                part.Write(Encoding.UTF8.GetBytes(text));
            }
        }

        return file.ToArray();
    }

    private static string Calendar(string lines) =>
        $"BEGIN:VCALENDAR\nVERSION:2.0\nPRODID:-//bench//EN\nBEGIN:VEVENT\nUID:a\nDTSTAMP:20260101T000000Z\nSUMMARY:Garage\n{lines}\nEND:VEVENT\nEND:VCALENDAR\n".ReplaceLineEndings("\r\n");
}
