using System.CommandLine;
using Refettle.Cli.Verbs;

namespace Refettle.Cli;

/// <summary>What is wrong with a command line, with what was probably meant.</summary>
internal static class UsageFaults
{
    public static Reply Of(ParseResult parsed)
    {
        var command = parsed.CommandResult.Command;
        if (command is RootCommand && parsed.UnmatchedTokens.FirstOrDefault(word => !word.StartsWith('-')) is { } word)
            return Reply.Bad([Unknown(word)], ExitCode.Usage);
        var help = command is RootCommand ? "refettle --help" : $"refettle {Path(command)} --help";
        return Reply.Bad(parsed.Errors.Select(error => new Fault("command line", Found(error.Message), Mend(error.Message, command, help))),
            ExitCode.Usage);
    }

    /// <summary>A word below a verb with the verb before it: <c>task add</c>.</summary>
    private static string Path(Command command) =>
        command.Parents.OfType<Command>().FirstOrDefault() is { } verb and not RootCommand ? $"{Path(verb)} {command.Name}" : command.Name;

    private static Fault Unknown(string word) =>
        new("command line", $"there is no verb {word}", NearNames.Ask(word, VerbList.Makers.Keys, "refettle --help lists them all."));

    /// <summary>The library names types of its own where a number was expected: <c>Cannot parse argument 'x' for option
    /// '--most' as expected type …</c></summary>
    private static string Found(string message) =>
        message.Split('\'') is [_, var word, _, var option, ..] && message.Contains(" as expected type ", StringComparison.Ordinal)
        ? $"{option} is {word}, which is not a number"
        : message.TrimEnd('.');

    /// <summary>An unknown option comes as <c>Unrecognized command or argument '--jsno'.</c></summary>
    private static string Mend(string message, Command command, string help)
    {
        var isUnknown = message.StartsWith("Unrecognized", StringComparison.Ordinal) && message.Contains("'-", StringComparison.Ordinal);
        var options = command.Options.Select(option => option.Name).Concat([GlobalOptions.Json, GlobalOptions.Car, GlobalOptions.Store]);
        var otherwise = $"{help} shows how it is written.";
        return isUnknown ? NearNames.Ask(message.Split('\'')[1], options, otherwise) : otherwise;
    }
}
