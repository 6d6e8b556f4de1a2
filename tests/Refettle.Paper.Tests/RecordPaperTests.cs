using System.Text;
using AngleSharp.Html.Parser;
using Refettle.Logbook;
using Refettle.Paper.Html;
using Refettle.Paper.Pdf;
using Refettle.SaleFile.Sealing;
using UglyToad.PdfPig;

namespace Refettle.Paper.Tests;

/// <summary>Alignment, work by others, what was substituted, and how a torque was looked at once more, read back from
/// page and PDF with AngleSharp and PdfPig: programs that know nothing of how they were written. The angles'
/// signs are those of ISO 8855:2011.</summary>
public sealed class RecordPaperTests
{
    private static readonly string[] _told =
    [
        "rear left", "toe 0.20°, camber -0.50°", "toe 0.10°, camber -1.25°, caster 3.20°", "Thrust line", "0.10° to the right",
        "with laser rig",
        "Work by others", "zinc plated", "a shop whose name is not given", "2026-03-20: even, thread clean",
        "substituted by another kind", "torqued to 50 N·m, checked by a second person, paint-marked",
    ];

    private static readonly string[] _hidden = ["North Plating", "A. Person"];

    [Fact]
    public void Pdf_and_page_tell_what_the_log_tells_and_keep_names_back()
    {
        using var example = Made();
        using var pdf = PdfDocument.Open(example.File("sale.pdf", PdfPaper.Write));
        var page = new HtmlParser().ParseDocument(File.ReadAllText(example.File("sale.html", HtmlPaper.Write)));
        var (printed, shown) = (Bare(string.Concat(pdf.GetPages().Select(one => one.Text))), Bare(page.Body!.TextContent));
        Assert.All(_told, told => Assert.Contains(Bare(told), shown, StringComparison.Ordinal));
        // A narrow cell of a table runs over lines, and between those stand its neighbours': word by word.
        Assert.All(_told.SelectMany(told => told.Split(' ')), word => Assert.Contains(word, printed, StringComparison.Ordinal));
        Assert.All(_hidden, hidden => Assert.DoesNotContain(Bare(hidden), printed + shown, StringComparison.Ordinal));
    }

    [Fact]
    public void They_verify_and_one_that_was_tampered_with_is_found()
    {
        using var example = Made();
        var (page, pdf) =
            (File.ReadAllBytes(example.File("sale.html", HtmlPaper.Write)), File.ReadAllBytes(example.File("sale.pdf", PdfPaper.Write)));
        Assert.All([page, pdf], file => Assert.Equal(SealStanding.Untouched, example.Verify(file).Standing));
        Assert.Equal(SealStanding.WordsChanged, example.Verify(Replaced(page, "zinc plated</td>", "gold plated</td>")).Standing);
        var sent = example.History.Lines.Select((line, place) => (line, place)).Single(one => one.line.Happening is SentOut).place + 1;
        foreach (var file in new[] { page, pdf })
        {
            var changed = example.Verify(Replaced(file, @"zinc plated\", @"gold plated\"));
            Assert.Equal((SealStanding.EntriesChanged, sent), (changed.Standing, Assert.Single(changed.Findings).Sequence));
        }
    }

    private static Example Made() => new(more: write =>
    {
        var found = new AlignmentMeasured(true, [new("rl", 0.2m, -0.5m, null), new("rr", 0, null, null)], null, "laser rig", "A. Person");
        write(found);
        var sent = write(new SentOut("North Plating", "zinc plated", [new("part tank", 1, null, [])], new(2026, 3, 2), null, new(80)));
        write(new CameBack(sent, [new("part tank", 1, null, "even, thread clean", true)], new(2026, 3, 20)));
        write(new VerdictGiven(new("tank", VerdictKind.Substitute, DoneBy.Self, null)));
        write(new StepDone(Fact.Off("tank"), null, null));
        write(new StepReversed(Fact.Off("tank"), null));
        write(new PiecesMoved(new("44-1"), 1, StockPlace.Shelf, StockPlace.On("heron", "part tank"), null, null));
        write(new JointTightened("tank-body", Tightness.Torqued, new(50), null, null)
        { Checks = [TighteningCheck.SecondPerson, TighteningCheck.PaintMark] });
        write(found with { AsFound = false, Wheels = [new("rl", 0.1m, -1.25m, 3.2m)] });
    });

    private static string Bare(string text) => string.Concat(text.Where(letter => !char.IsWhiteSpace(letter)));

    private static byte[] Replaced(byte[] file, string from, string to)
    {
        var text = Encoding.Latin1.GetString(file);
        Assert.Contains(from, text, StringComparison.Ordinal);
        return Encoding.Latin1.GetBytes(text.Replace(from, to, StringComparison.Ordinal));
    }
}
