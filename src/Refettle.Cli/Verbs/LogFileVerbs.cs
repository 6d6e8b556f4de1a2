using System.CommandLine;
using System.Text;
using Refettle.Cli.Commands;
using Refettle.Cli.Views;
using Refettle.Logbook;
using Refettle.Storage;

namespace Refettle.Cli.Verbs;

/// <summary>A car's log as a text file, to give away or take in.</summary>
internal static class LogFileVerbs
{
    public static Command Export(Desk desk)
    {
        var file = new Argument<string>("file") { Description = "Where to." };
        return new Command("export-log",
            "Writes the car's log as JSON Lines, sealed at the end, and its photos into a folder beside it.") { file }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
            {
                var text = new StringWriter();
                LogLines.Write(open.History.Lines.Select(line => line.Entry), text);
                return Reply.To(TextFile.Write(desk.PathOf(parsed.GetRequiredValue(file)), text.ToString()), written =>
                    Reply.To(open.Logbook.Photos.CopyTo(PhotoStore.Beside(written), Pictures(open.Car)), photos =>
                        Reply.Said($"{open.Entries.Count} entries{And(photos)} written to {written}.",
                            new { car = open.Car.Id, entries = open.Entries.Count, photos, file = written })));
            }));
    }

    public static Command Import(Desk desk)
    {
        var file = new Argument<string>("file") { Description = "What export-log wrote, here or on another machine." };
        return new Command("import-log", "Takes in a log; entries that are here already are passed over.") { file }
            .Answers(desk,
                parsed => desk.WithLogbook(parsed, logbook => Reply.To(TextFile.Bytes(desk.PathOf(parsed.GetRequiredValue(file))), bytes =>
                Reply.To(TextFile.From(desk.PathOf(parsed.GetRequiredValue(file)),
                    LogLines.Read(new StringReader(Encoding.UTF8.GetString(bytes)))),
                    entries => TakeIn(logbook, entries, PhotoStore.Beside(desk.PathOf(parsed.GetRequiredValue(file))))))));
    }

    private static Reply TakeIn(IGarageStore store, ValueList<Entry> entries, PhotoStore beside)
    {
        var fresh = store.Append(entries);
        if (!fresh.IsGood)
            return Reply.Bad(fresh.Faults, ExitCode.Store);
        var brought = beside.All().ToList();
        var photos = beside.CopyTo(store.Photos, brought);
        return photos.IsGood
            ? Reply.Said($"{fresh.Value} new of {entries.Count} entries{And(brought.Count)}.",
                new
                {
                    entries = entries.Count,
                    fresh = fresh.Value,
                    photos = brought.Count,
                    cars = entries.Select(entry => entry.Car).Distinct()
                })
            : Reply.Bad(photos.Faults, ExitCode.Store);
    }

    /// <summary>Those that are still on a phone are left out: they come over when it sends them.</summary>
    private static IEnumerable<string> Pictures(Car car) =>
        car.Photos.SelectMany(photo => new[] { photo.Hash, photo.Small, photo.Original }).OfType<string>().Distinct();

    private static string And(int photos) => photos == 0 ? "" : $" and {Wording.Count(photos, "photo")}";
}
