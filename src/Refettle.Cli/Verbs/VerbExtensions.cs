using System.CommandLine;

namespace Refettle.Cli.Verbs;

/// <summary>Gives commands their answers.</summary>
internal static class VerbExtensions
{
    /// <summary>The command shows what this replies; a line on the error stream tells of waiting.</summary>
    public static Command Answers(this Command command, Desk desk, Func<ParseResult, Reply> reply)
    {
        command.SetAction(parsed => (int)Show(desk, parsed, Waiting(desk, parsed, reply)));
        return command;
    }

    /// <summary>After a good answer something more is done, whose reply decides the exit code.</summary>
    public static Command Then(this Command command, Desk desk, Func<ParseResult, Reply?> next)
    {
        var first = (System.CommandLine.Invocation.SynchronousCommandLineAction)command.Action!;
        command.SetAction(parsed =>
        {
            var code = first.Invoke(parsed);
            return code == (int)ExitCode.Good && next(parsed) is { } reply ? (int)Show(desk, parsed, reply) : code;
        });
        return command;
    }

    private static ExitCode Show(Desk desk, ParseResult parsed, Reply reply) => desk.IsQuiet && reply.Code == ExitCode.Good
        ? reply.Code
        : new Printer(desk.Around).Show(reply, parsed.GetValue<bool>(GlobalOptions.Json));

    private static Reply Waiting(Desk desk, ParseResult parsed, Func<ParseResult, Reply> reply)
    {
        using var progress = desk.IsQuiet ? null : new Progress(desk.Around, "working");
        return reply(parsed);
    }
}
