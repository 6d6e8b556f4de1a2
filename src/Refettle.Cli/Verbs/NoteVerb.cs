using System.CommandLine;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs;

internal static class NoteVerb
{
    public static Command Make(Desk desk)
    {
        var text = new Argument<string>("text") { Description = "What is to be remembered." };
        var about = new Option<string>("--about") { Description = "The thing it is about: \"part x\", \"joint x\" …; by default the car." };
        return new Command("note", "Writes a line into the log.") { text, about }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
                desk.Record(open, [new Noted(parsed.GetRequiredValue(text), parsed.GetValue(about))], now => Stands.After(now, "Noted."))));
    }
}
