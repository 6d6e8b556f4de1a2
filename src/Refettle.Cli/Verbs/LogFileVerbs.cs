using System.CommandLine;
using System.Text;
using Refettle.Cli.Commands;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs;

/// <summary>A car's log as a text file, to give away or take in.</summary>
internal static class LogFileVerbs
{
    public static Command Export(Desk desk)
    {
        var file = new Argument<string>("file") { Description = "Where to." };
        return new Command("export-log", "Writes the car's log as JSON Lines, sealed at the end.") { file }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
            {
                var text = new StringWriter();
                LogLines.Write(open.History.Lines.Select(line => line.Entry), text);
                return Reply.To(TextFile.Write(desk.PathOf(parsed.GetRequiredValue(file)), text.ToString()), written =>
                    Reply.Said($"{open.Entries.Count} entries written to {written}.", new { car = open.Car.Id, entries = open.Entries.Count, file = written }));
            }));
    }

    public static Command Import(Desk desk)
    {
        var file = new Argument<string>("file") { Description = "What export-log wrote, here or on another machine." };
        return new Command("import-log", "Takes in a log; entries that are here already are passed over.") { file }
            .Answers(desk, parsed => desk.WithLogbook(parsed, logbook => Reply.To(TextFile.Bytes(desk.PathOf(parsed.GetRequiredValue(file))), bytes =>
                Reply.To(LogLines.Read(new StringReader(Encoding.UTF8.GetString(bytes))), entries => TakeIn(logbook, entries)))));
    }

    private static Reply TakeIn(ILogbook logbook, ValueList<Entry> entries)
    {
        var fresh = logbook.Append(entries);
        return fresh.IsGood
            ? Reply.Said($"{fresh.Value} new of {entries.Count} entries.", new { entries = entries.Count, fresh = fresh.Value, cars = entries.Select(entry => entry.Car).Distinct() })
            : Reply.Bad(fresh.Faults, ExitCode.Store);
    }
}
