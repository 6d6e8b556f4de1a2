using PdfSharp.Drawing;
using PdfSharp.Pdf;
using Refettle.SaleFile;
using Refettle.SaleFile.Sealing;

namespace Refettle.Paper.Pdf;

/// <summary>The sale file as a PDF: paged, with bookmarks and embedded fonts, the sealed record attached.</summary>
public static class PdfPaper
{
    /// <summary>Name of the attached record.</summary>
    public const string RecordName = "record.jsonl";

    /// <param name="file">Can be sought in; it is left open.</param>
    public static void Write(Stream file, SalePaper paper)
    {
        using (var document = new PdfDocument())
        {
            Describe(document, paper.Document);
            using (var layout = new Layout(document, paper))
                layout.Write();
            PageStreams.Compress(document);
            Attach(document, paper);
            document.Save(file, closeStream: false);
        }

        FileSeal.Close(file, paper.Key);
        paper.Progress?.Report(1);
    }

    private static void Describe(PdfDocument document, SaleDocument sale)
    {
        document.Info.Title = $"{sale.Title}: {sale.Subtitle}";
        document.Info.Subject = "What was done to this car, sealed and signed";
        document.Info.Keywords = $"key {sale.Fingerprint}";
        document.Info.Creator = "Refettle";
        document.Info.CreationDate = sale.Made.UtcDateTime;
        document.Language = SaleDocument.Language;
        document.ViewerPreferences.DisplayDocTitle = true;
        document.PageMode = PdfPageMode.UseOutlines;
    }

    /// <summary>Not compressed: the signature is written into its place once the file is finished.</summary>
    private static void Attach(PdfDocument document, SalePaper paper)
    {
        var record = new MemoryStream();
        using (var text = SalePaper.Text(record))
            paper.WriteRecord(text);
        var stream = new PdfDictionary(document);
        stream.Elements.SetName("/Type", "/EmbeddedFile");
        stream.Elements.SetName("/Subtype", "/application#2Fjsonl");
        stream.CreateStream(record.ToArray());
        document.Internals.AddObject(stream);
        var named = new PdfDictionary(document);
        named.Elements.SetName("/Type", "/Filespec");
        named.Elements.SetString("/F", RecordName);
        named.Elements.SetString("/UF", RecordName);
        named.Elements.SetString("/Desc", "Every entry of the log, with the signature");
        named.Elements.SetName("/AFRelationship", "/Source");
        var held = new PdfDictionary(document);
        held.Elements.SetReference("/F", stream);
        named.Elements["/EF"] = held;
        document.Internals.AddObject(named);
        Name(document, named);
    }

    private static void Name(PdfDocument document, PdfDictionary file)
    {
        var files = new PdfDictionary(document);
        files.Elements["/Names"] = new PdfArray(document, new PdfString(RecordName), file.Reference!);
        var names = new PdfDictionary(document);
        names.Elements["/EmbeddedFiles"] = files;
        document.Internals.Catalog.Elements["/Names"] = names;
        document.Internals.Catalog.Elements["/AF"] = new PdfArray(document, file.Reference!);
    }
}
