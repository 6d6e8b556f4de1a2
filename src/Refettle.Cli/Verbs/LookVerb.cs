using System.CommandLine;
using Refettle.CloseUp;
using Spectre.Console;

namespace Refettle.Cli.Verbs;

internal static class LookVerb
{
    public static Command Make(Desk desk)
    {
        var space = new Argument<string>("space") { Description = "The space that is about to be closed." };
        var source = new CarSource();
        return source.AddTo(new("look", "The last look into a space before it is closed: what is still to be done in there.") { space })
            .Answers(desk, parsed => source.With(desk, parsed, car => Look(car, parsed.GetRequiredValue(space))));
    }

    private static Reply Look(Car car, string space)
    {
        var beside = LastLook.Beside(car, space);
        return Reply.To(LastLook.Of(car, space), left => new(
            new Rows([new Text(Says(left, beside)),
                .. beside.Select(open => new Text($"Also open on what lies in there, and to be closed later too: {open}"))]),
            new { space, left, beside }));
    }

    private static string Says(ValueList<Fact> left, ValueList<Fact> beside) => left.Count > 0 ? $"Not yet: {string.Join(", ", left)}"
        : $"By the log all is done {(beside.Count == 0 ? "in there" : "that can only be done with it open")}. Photograph it, count the tools, then close it.";
}
