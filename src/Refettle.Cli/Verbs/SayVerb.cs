using System.CommandLine;
using Refettle.Cli.Views;
using Refettle.QuickLine;

namespace Refettle.Cli.Verbs;

internal static class SayVerb
{
    public static Command Make(Desk desk)
    {
        var line = new Argument<string>("line") { Description = "What you would say: \"front left drop link worn, need 2\"." };
        var near = new Option<string?>("--near")
        { Description = "What you are looking at: \"part x\"; a line that names nothing is about it." };
        var keep = new Option<int?>("--keep")
        { Description = "Writes the reading of this number, 1 for the first; without it nothing is written." };
        return new Command("say", "Understands a line in plain words, shows how, and keeps it when told to.") { line, near, keep }
            .Answers(desk,
                parsed => desk.WithCar(parsed,
                    open => Answer(desk, open, parsed.GetRequiredValue(line), parsed.GetValue(near), parsed.GetValue(keep))));
    }

    private static Reply Answer(Desk desk, OpenCar open, string line, string? near, int? keep)
    {
        if (line.Trim() is not { Length: > 0 and <= LineReader.MaxLength })
            return Reply.Bad([new("line", line.Trim().Length == 0 ? "it is empty" : $"it has {line.Length} characters",
                $"Say something in at most {LineReader.MaxLength} characters.")]);
        var answer = new LineReader(open.Car.Structure).Read(line, near);
        if (keep is null)
            return new(ReadingView.Of(answer),
                new { car = open.Car.Id, line, readings = answer.Readings, unread = answer.Unread, kept = (int?)null });
        if (keep < 1 || keep > answer.Readings.Count)
            return Reply.Bad(
                [new("--keep", $"there is no reading {keep}", $"Give 1 to {answer.Readings.Count}; without --keep they are shown.")]);
        var reading = answer.Readings[keep.Value - 1];
        return desk.Record(open, Telling.Of(open.Car, answer, reading), now => Discovered.With(desk, open, now, Reply.Said(
            $"Kept: {ReadingView.Says(reading)}.",
            new { car = now.Car.Id, line, readings = answer.Readings, unread = answer.Unread, kept = keep })));
    }
}
