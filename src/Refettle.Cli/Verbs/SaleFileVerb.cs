using System.CommandLine;
using Refettle.Cli.Commands;
using Refettle.Paper;
using Refettle.Paper.Html;
using Refettle.Paper.Pdf;
using Refettle.SaleFile;
using Refettle.Server;
using Refettle.Storage;

namespace Refettle.Cli.Verbs;

/// <summary>The record for a buyer, in one file.</summary>
internal static class SaleFileVerb
{
    private static readonly (string Option, string Says, Action<Stream, SalePaper> Write)[] Forms =
    [
        ("--html", "As one page that needs only a browser.", HtmlPaper.Write),
        ("--pdf", "As a PDF for print.", PdfPaper.Write),
        ("--record", "The sealed entries alone, for programs.", (file, paper) => paper.WriteRecord(file)),
    ];

    public static Command Make(Desk desk)
    {
        var files = Forms.Select(form => new Option<string>(form.Option) { Description = form.Says, HelpName = "file" }).ToArray();
        var prices = new Option<bool>("--with-prices") { Description = "Prices and money too." };
        var names = new Option<bool>("--with-names") { Description = "Names of people and shops too." };
        var hours = new Option<bool>("--without-hours") { Description = "Leave out how long things took." };
        var hide = new Option<string[]>("--hide")
        { Description = "Marks of entries whose words are blacked out.", AllowMultipleArgumentsPerToken = true };
        var command = new Command("sale-file", "Writes the record for a buyer: what was done, by whom and when, sealed and signed.")
            { prices, names, hours, hide };
        foreach (var file in files)
            command.Add(file);
        return command.Answers(desk,
            parsed => desk.WithCar(parsed, open => Reply.To(Marks.FindAll(open, parsed.GetValue(hide) ?? []), hidden =>
            Write(desk, open, new(parsed.GetValue(prices), parsed.GetValue(names), !parsed.GetValue(hours), hidden),
                [.. files.Select(parsed.GetValue)]))));
    }

    private static Reply Write(Desk desk, OpenCar open, Privacy privacy, string?[] files)
    {
        if (Array.TrueForAll(files, file => file is null))
            return Reply.Bad([new("sale-file", "it is not said where to", "Give --html FILE, --pdf FILE, or both.")], ExitCode.Usage);
        var made = SaleFiles.Of(open.History, privacy, open.Logbook, desk.Around.Clock, paper => Write(desk, files, paper));
        return Reply.To(made, reply => reply);
    }

    private static Reply Write(Desk desk, string?[] files, SalePaper paper)
    {
        var written = new List<string>();
        foreach (var (form, file) in Forms.Zip(files).Where(pair => pair.Second is not null))
        {
            var told = paper with { Progress = new Telling(desk.Around, file!) };
            var result = BinaryFile.Write(desk.PathOf(file!), stream => form.Write(stream, told));
            if (!result.IsGood)
                return Reply.Bad(result.Faults);
            written.Add(result.Value);
        }

        var leftOut = paper.Privacy.LeftOut;
        return Reply.Said(
            $"{paper.Document.Entries.Count} entries sealed; written to {string.Join(" and ", written)}. {(leftOut.Count == 0 ? "" : $"Left out: {string.Join(", ", leftOut)}. ")}Read it before you give it away.\nKey: {paper.Document.Fingerprint}",
            new
            {
                car = paper.Car,
                entries = paper.Document.Entries.Count,
                files = written,
                leftOut,
                fingerprint = paper.Document.Fingerprint
            });
    }

    /// <summary>A line on the error stream at most every second, while a person watches.</summary>
    private sealed class Telling(Surroundings around, string file) : IProgress<double>
    {
        private long _last = around.Clock.GetTimestamp();

        public void Report(double value)
        {
            if (!around.IsWatched || around.Clock.GetElapsedTime(_last) < TimeSpan.FromSeconds(1))
                return;
            _last = around.Clock.GetTimestamp();
            around.Error.WriteLine($"\r{file}: {value:0 %} …");
        }
    }
}
