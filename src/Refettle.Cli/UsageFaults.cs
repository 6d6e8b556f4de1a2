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
        var help = command is RootCommand ? "refettle --help" : $"refettle {command.Name} --help";
        return Reply.Bad(parsed.Errors.Select(error => new Fault("command line", error.Message.TrimEnd('.'), Mend(error.Message, command, help))), ExitCode.Usage);
    }

    private static Fault Unknown(string word) =>
        new("command line", $"there is no verb {word}", NearNames.Ask(word, VerbList.Makers.Keys, "refettle --help lists them all."));

    /// <summary>An unknown option comes as <c>Unrecognized command or argument '--jsno'.</c></summary>
    private static string Mend(string message, Command command, string help)
    {
        var quoted = message.Split('\'');
        var options = command.Options.Select(option => option.Name).Concat([GlobalOptions.Json, GlobalOptions.Car, GlobalOptions.Store]);
        var meant = quoted.Length > 1 && quoted[1].StartsWith('-') ? NearNames.Ask(quoted[1], options, "") : "";
        return meant.Length > 0 ? meant : $"{help} shows how it is written.";
    }
}
