using System.Text;

namespace Refettle.Cli.Commands;

/// <summary>One command of a file of commands.</summary>
/// <param name="Number">Its line, from 1.</param>
internal sealed record CommandLine(int Number, ValueList<string> Words);

/// <summary>Reads a file of commands: one a line, words as in a shell.</summary>
internal static class CommandLines
{
    /// <summary>All commands, or a fault for every line whose quotes do not close. Blank lines and comments are left out.</summary>
    public static Result<ValueList<CommandLine>> Read(IEnumerable<string> lines)
    {
        var read = lines.Select((line, index) => (Number: index + 1, Words: Split(line))).ToList();
        var faults = read.Where(line => line.Words is null).Select(line => Unclosed(line.Number)).ToList();
        return faults.Count > 0
            ? Result<ValueList<CommandLine>>.Bad(faults)
            : Result<ValueList<CommandLine>>.Good(
                read.Where(line => line.Words!.Count > 0).Select(line => new CommandLine(line.Number, line.Words!.ToValueList()))
                    .ToValueList());
    }

    /// <summary>The words of a line: parted by blanks, kept together by quotes, ended by <c>#</c> at a word's start.
    /// Null when a quote does not close.</summary>
    public static List<string>? Split(string line)
    {
        var words = new List<string>();
        StringBuilder? word = null;
        var quote = '\0';
        foreach (var c in line)
        {
            if (quote == '\0' && word is null && c == '#')
                break;
            if (quote == '\0' && char.IsWhiteSpace(c))
                End();
            else if (quote == c)
                quote = '\0';
            else if (quote == '\0' && c is '"' or '\'' && quote == '\0')
                (quote, word) = (c, word ?? new());
            else
                (word ??= new()).Append(c);
        }

        End();
        return quote == '\0' ? words : null;

        void End()
        {
            if (word is not null)
                words.Add(word.ToString());
            word = null;
        }
    }

    private static Fault Unclosed(int line) =>
        new("command", "a quote does not close", "End it with the mark it began with.") { Line = line, Column = 1 };
}
