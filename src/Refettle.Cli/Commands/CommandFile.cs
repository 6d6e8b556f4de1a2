namespace Refettle.Cli.Commands;

/// <summary>Runs files of commands.</summary>
internal static class CommandFile
{
    /// <summary>Runs the commands one after the other, as if typed; paths in them are beside the file.</summary>
    /// <param name="passed">Options put at the end of each command.</param>
    public static Reply Run(Desk desk, string file, ValueList<string> passed)
    {
        var path = desk.PathOf(file);
        return Reply.To(TextFile.Lines(path), lines => Reply.To(TextFile.From(path, CommandLines.Read(lines)), commands =>
        {
            using var beside = desk.Beside(path);
            foreach (var (command, done) in commands.Select((command, index) => (command, index)))
            {
                var code = desk.Run([.. command.Words, .. passed]);
                if (code != ExitCode.Good)
                    return Stopped(file, command, done, code);
            }

            return Reply.Said($"{commands.Count} commands of {file} done.", new { file, commands = commands.Count });
        }));
    }

    private static Reply Stopped(string file, CommandLine command, int done, ExitCode code) => Reply.Bad(
        [new Fault(command.Words[0], "this command failed, the script stops here",
            $"The {done} before it are recorded. Mend the line, then run what is left.")
                { Line = command.Number, Column = 1, File = file }],
        code);
}
