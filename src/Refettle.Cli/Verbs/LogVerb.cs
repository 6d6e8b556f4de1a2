using System.CommandLine;
using Refettle.Cli.Views;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs;

internal static class LogVerb
{
    private const int MarkLength = 8;

    public static Command Make(Desk desk)
    {
        var most = new Option<int>("--most") { Description = "The newest so many; 0 for all.", DefaultValueFactory = _ => 30 };
        return new Command("log", "The entries of the logbook, oldest first.") { most }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
            {
                var lines = open.History.Lines;
                var shown = parsed.GetValue(most) is > 0 and var limit ? lines.TakeLast(limit).ToValueList() : lines;
                var names = open.Logbook.Devices.Names();
                return new(LogView.Of(shown, lines.Count, desk.WallOf(open.Car), names),
                    new { car = open.Car.Id, lines = shown.Select(line => Form(line, names)).ToValueList() })
                { Faults = [.. open.History.Faults, .. Clocks(desk, open, names)] };
            }));
    }

    /// <summary>What is wrong with clocks, as far as the log shows it.</summary>
    private static IEnumerable<Fault> Clocks(Desk desk, OpenCar open, DeviceNames names) =>
        ClockDoubts.Of(open.History, desk.Around.Clock.GetUtcNow()).Select(doubt => doubt.Says(open.Logbook.Device, names));

    /// <summary>The last letters of an identifier: its first ones are the time, alike for entries of one evening.</summary>
    public static string Mark(Guid id) => $"{id:N}"[^MarkLength..];

    private static object Form(HistoryLine line, DeviceNames names) => new
    {
        id = line.Entry.Id,
        mark = Mark(line.Entry.Id),
        at = line.Entry.At,
        device = line.Entry.Device,
        deviceName = names.Of(line.Entry.Device),
        sequence = line.Entry.Sequence,
        kind = line.Entry.Kind,
        says = Told.Of(line),
        standing = line.Standing,
        reason = line.Reason,
    };
}
