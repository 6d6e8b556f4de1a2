using Refettle.Paper.Pdf;
using Refettle.SaleFile;
using Refettle.SaleFile.Sealing;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Outline;

namespace Refettle.Paper.Tests.Pdf;

/// <summary>The PDF is read back with PdfPig, and looked over by qpdf --check and pdfinfo, where they are there.</summary>
public sealed class PdfPaperTests
{
    [Fact]
    public void It_is_read_back_word_for_word()
    {
        using var example = new Example();
        using var pdf = PdfDocument.Open(example.File("sale.pdf", PdfPaper.Write));
        var words = Words(pdf);
        foreach (var said in example.Document.Sections.SelectMany(section => section.Blocks).OfType<Said>())
            Assert.Contains(Bare(said.Text), words, StringComparison.Ordinal);
        Assert.Contains(Bare("Fuel tank: Strap bent “badly” <b>"), words, StringComparison.Ordinal);
        Assert.Contains(Bare("torqued to 48.5 N·m with wrench 20–100"), words, StringComparison.Ordinal);
        Assert.DoesNotContain("Sam", words, StringComparison.Ordinal);
        Assert.Equal("Calder Heron <2.2> & co, 1988: The record of what was done", pdf.Information.Title);
    }

    [Fact]
    public void Every_chapter_has_a_bookmark_that_leads_to_its_page()
    {
        using var example = new Example(notes: 250);
        using var pdf = PdfDocument.Open(example.File("sale.pdf", PdfPaper.Write));
        Assert.True(pdf.TryGetBookmarks(out var marks));
        var nodes = marks.GetNodes().OfType<DocumentBookmarkNode>().ToList();
        Assert.Equal(example.Document.Sections.Select(section => section.Title).Append("All entries")
            .Concat(["Entries from 1", "Entries from 101", "Entries from 201"]), nodes.Select(node => node.Title));
        Assert.All(nodes.Where(node => node.Level == 0),
            node => Assert.Contains(Bare(node.Title), Bare(pdf.GetPage(node.PageNumber).Text), StringComparison.Ordinal));
        Assert.All(nodes.Where(node => node.Level > 0), node => Assert.Contains(
            Bare($"{node.Title.Split(' ')[^1]} {example.History.Lines[int.Parse(node.Title.Split(' ')[^1]) - 1].Entry.At:yyyy-MM-dd HH:mm} bench"), Bare(pdf.GetPage(node.PageNumber).Text), StringComparison.Ordinal));
    }

    [Fact]
    public void Pages_are_numbered_and_nothing_runs_over_their_edges()
    {
        using var example = new Example(notes: 250);
        using var pdf = PdfDocument.Open(example.File("sale.pdf", PdfPaper.Write));
        Assert.InRange(pdf.NumberOfPages, 5, 40);
        foreach (var page in pdf.GetPages())
        {
            Assert.Contains($"{page.Number}/{pdf.NumberOfPages}", Bare(page.Text), StringComparison.Ordinal);
            Assert.All(page.Letters,
                letter => Assert.True(letter.BoundingBox.Left >= 30 && letter.BoundingBox.Right <= page.Width - 30
                    && letter.BoundingBox.Bottom >= 30 && letter.BoundingBox.Top <= page.Height - 30,
                $"page {page.Number}: {letter.Value} at {letter.BoundingBox}"));
            Assert.All(page.Letters, letter => Assert.Contains("Liberation Sans", letter.FontName, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void The_record_is_attached_as_it_is_and_a_change_is_found()
    {
        using var example = new Example();
        var path = example.File("sale.pdf", PdfPaper.Write);
        var file = File.ReadAllBytes(path);
        Assert.Equal(SealStanding.Untouched, example.Verify(file).Standing);
        using (var pdf = PdfDocument.Open(path))
        {
            Assert.True(pdf.Advanced.TryGetEmbeddedFiles(out var attached));
            Assert.Equal(SealStanding.WordsChanged, example.Verify([.. Assert.Single(attached).Memory.Span]).Standing);
        }

        var text = System.Text.Encoding.Latin1.GetString(file);
        byte[] With(string from, string to) => System.Text.Encoding.Latin1.GetBytes(text.Replace(from, to, StringComparison.Ordinal));
        Assert.Equal(8, Assert.Single(example.Verify(With("wrench 20\\u2013100", "wrench 20\\u2013900")).Findings).Sequence);
        Assert.Equal(SealStanding.WordsChanged, example.Verify(With("/DisplayDocTitle true", "/DisplayDocTitle xrue")).Standing);
    }

    [ToolFact("qpdf")]
    public void An_independent_checker_finds_nothing_wrong()
    {
        using var example = new Example(notes: 250) { Pictures = new Snapshots() };
        example.Document = example.Document with
        {
            Sections = [.. example.Document.Sections,
                new("Pictures",
                    [new Pictures([new("a", 64, 48, "One", 3), new("gone", 64, 48, "Two", 3), new("c", 64, 48, "Three", 3)])])]
        };
        Assert.Contains("No syntax or stream encoding errors", Tool.Run("qpdf", "--check", example.File("sale.pdf", PdfPaper.Write)),
            StringComparison.Ordinal);
    }

    [ToolFact("pdfinfo")]
    public void Its_description_is_read_elsewhere()
    {
        using var example = new Example();
        var path = example.File("sale.pdf", PdfPaper.Write);
        var said = Tool.Run("pdfinfo", path);
        Assert.Contains("Calder Heron <2.2> & co, 1988: The record of what was done", said, StringComparison.Ordinal);
        Assert.Contains("A4", said, StringComparison.Ordinal);
        Assert.All(Tool.Run("pdffonts", path).Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(2),
            font => Assert.Matches("[A-Z]{6}\\+Liberation Sans.* yes yes yes", font));
    }

    /// <summary>Without blanks: a line's end is none in the file.</summary>
    private static string Bare(string text) => string.Concat(text.Where(letter => !char.IsWhiteSpace(letter)));

    private static string Words(PdfDocument pdf) => string.Concat(pdf.GetPages().Select(page => Bare(page.Text)));
}
