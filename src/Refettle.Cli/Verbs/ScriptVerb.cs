using System.CommandLine;
using Refettle.Cli.Commands;

namespace Refettle.Cli.Verbs;

internal static class ScriptVerb
{
    public static Command Make(Desk desk)
    {
        var file = new Argument<string>("file") { Description = "The file: one command a line, # begins a comment." };
        return new Command("script", "Runs a file of commands in one go, and stops at the first that fails.") { file }
            .Answers(desk, parsed => CommandFile.Run(desk, parsed.GetRequiredValue(file), Passed(parsed)));
    }

    /// <summary>The store and the car that the script's own line names hold for its commands.</summary>
    public static ValueList<string> Passed(ParseResult parsed) =>
        new[] { GlobalOptions.Store, GlobalOptions.Car }
            .Where(option => parsed.GetValue<string>(option) is not null)
            .SelectMany(option => new[] { option, parsed.GetValue<string>(option)! }).ToValueList();
}
