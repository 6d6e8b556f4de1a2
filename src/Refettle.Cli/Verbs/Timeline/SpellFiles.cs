using System.CommandLine;
using Refettle.Cli.Commands;
using Refettle.Logbook;
using Refettle.Sheets.Calendars;

namespace Refettle.Cli.Verbs.Timeline;

/// <summary>Spells from and to a calendar file.</summary>
internal static class SpellFiles
{
    public static Command Import(Desk desk)
    {
        var file = new Argument<string>("file") { Description = "An iCalendar file (.ics)." };
        return new Command("import", "Takes spells from a calendar file: single, daily and weekly events.") { file }
            .Answers(desk,
                parsed => desk.WithCar(parsed, open => Reply.To(TextFile.Text(desk.PathOf(parsed.GetRequiredValue(file))), text =>
                Reply.To(TextFile.From(desk.PathOf(parsed.GetRequiredValue(file)), SpellsReader.Read(text, open.Car.Calendar.TimeZone)),
                    read => desk.Record(open, Happenings(open.Car, read), now =>
                    SpellVerb.Said(now, $"{Views.Wording.Count(read.Spells.Count, "spell")} taken in."))))));
    }

    public static Command Export(Desk desk)
    {
        var file = new Argument<string>("file") { Description = "Where to." };
        return new Command("export", "Writes the spells as a calendar file.") { file }
            .Answers(desk,
                parsed => desk.WithCar(parsed,
                    open => Reply.To(TextFile.Write(desk.PathOf(parsed.GetRequiredValue(file)), SpellsWriter.Write(open.Car.Calendar)),
                        written =>
                Reply.Said($"{Views.Wording.Count(open.Car.Calendar.Spells.Count, "spell")} written to {written}.",
                    new { car = open.Car.Id, spells = open.Car.Calendar.Spells.Count, file = written }))));
    }

    /// <summary>A category that names no facility here is only a word of the calendar it comes from.</summary>
    private static IReadOnlyList<Happening> Happenings(Car car, SpellsFile read) =>
    [
        .. car.Calendar.TimeZone is null && read.Zone is { } zone ? [new TimeZoneChosen(zone)] : Array.Empty<Happening>(),
        .. read.Spells
            .Select(spell => new SpellAdded(car.Calendar.Facilities.Any(facility => facility.Id == spell.Whose)
                ? spell
                : spell with { Whose = null })),
    ];
}
