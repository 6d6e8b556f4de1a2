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
            .Answers(desk, parsed => source.With(desk, parsed, car => Reply.To(LastLook.Of(car, parsed.GetRequiredValue(space)), left => new(
                new Text(left.Count == 0 ? "By the log all is done in there. Photograph it, count the tools, then close it." : $"Not yet: {string.Join(", ", left)}"),
                new { space = parsed.GetRequiredValue(space), left }))));
    }
}
