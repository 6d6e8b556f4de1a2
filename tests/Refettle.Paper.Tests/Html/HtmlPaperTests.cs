using System.Diagnostics;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using Refettle.Paper.Html;
using Refettle.SaleFile;
using Refettle.SaleFile.Sealing;

namespace Refettle.Paper.Tests.Html;

/// <summary>The page is read back with AngleSharp, an HTML5 parser; the seal is checked by docs/verify-sale-file.py
/// with Python's hashlib and openssl.</summary>
public sealed class HtmlPaperTests
{
    private static readonly byte[] Dot = Convert.FromHexString("ffd8ffe000104a46494600010100000100010000ffd9");

    [Fact]
    public void The_page_is_well_formed_and_every_reference_leads_to_an_entry()
    {
        using var example = new Example();
        var errors = new List<string>();
        var page = Parse(example, errors);
        Assert.Empty(errors);
        Assert.Equal(("en", "Calder Heron <2.2> & co, 1988: The record of what was done"),
            (page.DocumentElement.GetAttribute("lang"), page.Title));
        Assert.Equal(example.Document.Sections.Select(section => section.Title).Append("All entries"),
            page.QuerySelectorAll("h2").Select(title => title.TextContent));
        var links = page.QuerySelectorAll("a[href^='#']").Select(link => link.GetAttribute("href")![1..]).ToList();
        Assert.Contains("e3", links);
        Assert.All(links, link => Assert.NotNull(page.GetElementById(link)));
        Assert.Contains("Fuel tank: Strap bent “badly” <b>", page.GetElementById("e3")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(example.History.Lines.Count, page.QuerySelectorAll("#log tbody tr").Length);
    }

    [Fact]
    public void It_needs_nothing_from_outside_and_runs_nothing()
    {
        using var example = new Example();
        var page = Parse(example, []);
        Assert.Empty(page.QuerySelectorAll("link, iframe, object, embed, form, [onclick], [onload], script[src]"));
        Assert.Equal("application/jsonl", Assert.Single(page.QuerySelectorAll("script")).GetAttribute("type"));
        Assert.StartsWith("default-src 'none'", page.QuerySelector("meta[http-equiv='Content-Security-Policy']")!.GetAttribute("content"),
            StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_left_out_is_nowhere_in_it()
    {
        using var example = new Example();
        var text = File.ReadAllText(example.File("sale.html", HtmlPaper.Write));
        Assert.DoesNotContain("Sam", text, StringComparison.Ordinal);
        Assert.DoesNotContain("45 EUR", text, StringComparison.Ordinal);
        Assert.Contains("wrench 20", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Pictures_lie_in_the_page_and_one_that_is_missing_is_said_to_be()
    {
        using var example = new Example { Pictures = new OnePicture() };
        example.Document = example.Document with
        {
            Sections = [.. example.Document.Sections,
                new("Pictures", [new Pictures([new("here", 4, 3, "Strap \"bent\"", 3), new("gone", 4, 3, "Lost", 3)])])]
        };
        var page = Parse(example, []);
        var image = Assert.Single(page.QuerySelectorAll("img"));
        Assert.Equal(("Strap \"bent\"", "4", $"data:image/jpeg;base64,{Convert.ToBase64String(Dot)}"),
            (image.GetAttribute("alt"), image.GetAttribute("width"), image.GetAttribute("src")));
        Assert.Contains("not on the machine", page.QuerySelectorAll("figcaption")[1].TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_change_of_a_word_or_of_an_entry_is_told_apart()
    {
        using var example = new Example();
        var file = File.ReadAllBytes(example.File("sale.html", HtmlPaper.Write));
        Assert.Equal(SealStanding.Untouched, example.Verify(file).Standing);
        Assert.Equal(SealStanding.WordsChanged, example.Verify(Replaced(file, "Tank strap bolts</td>", "Tank strap brace</td>")).Standing);
        var changed = example.Verify(Replaced(file, "wrench 20\\u2013100", "wrench 20\\u2013900"));
        Assert.Equal((SealStanding.EntriesChanged, 8), (changed.Standing, Assert.Single(changed.Findings).Sequence));
    }

    [PythonFact]
    public void Another_program_comes_to_the_same_verdict()
    {
        using var example = new Example();
        var path = example.File("sale.html", HtmlPaper.Write);
        Assert.Equal(["list signed: True", "file signed: True",
            $"key: {example.Document.Fingerprint.Replace(" ", "", StringComparison.Ordinal)}", "entries: 9"],
            PythonFactAttribute.Check(path));
        File.WriteAllBytes(path, Replaced(File.ReadAllBytes(path), "wrench 20\\u2013100", "wrench 20\\u2013900"));
        var changed = PythonFactAttribute.Check(path);
        Assert.Contains("file signed: False", changed);
        Assert.Equal("differs: bench 8", changed[^1]);
    }

    private static IDocument Parse(Example example, List<string> errors)
    {
        var parser = new HtmlParser();
        parser.Error += (_,
            problem) => errors.Add(
                $"{((AngleSharp.Html.Dom.Events.HtmlErrorEvent)problem).Message} at {((AngleSharp.Html.Dom.Events.HtmlErrorEvent)problem).Position}");
        return parser.ParseDocument(File.ReadAllText(example.File("sale.html", HtmlPaper.Write)));
    }

    private static byte[] Replaced(byte[] file, string from, string to)
    {
        var text = System.Text.Encoding.UTF8.GetString(file);
        Assert.Contains(from, text, StringComparison.Ordinal);
        return System.Text.Encoding.UTF8.GetBytes(text.Replace(from, to, StringComparison.Ordinal));
    }

    private sealed class OnePicture : IPictureSource
    {
        public byte[]? Read(string name, int mostPixels) => name == "here" ? Dot : null;
    }
}

/// <summary>Skipped, by name, on a machine without python3 and openssl.</summary>
internal sealed class PythonFactAttribute : FactAttribute
{
    public PythonFactAttribute() =>
        Skip = Run("python3", "--version") is null || Run("openssl", "version") is null
            ? "python3 and openssl are missing: apt-get install python3 openssl"
            : null;

    /// <summary>What docs/verify-sale-file.py says, by lines.</summary>
    public static string[] Check(string file) =>
        Run("python3", Path.Combine(AppContext.BaseDirectory, "docs", "verify-sale-file.py"), file)!.Split('\n',
            StringSplitOptions.RemoveEmptyEntries);

    private static string? Run(string program, params string[] arguments)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true })!;
            var said = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return process.ExitCode == 0 ? said : null;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null;
        }
    }
}
