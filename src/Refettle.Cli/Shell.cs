using System.CommandLine;
using Refettle.Cli.Verbs;
using Refettle.Logbook;

namespace Refettle.Cli;

/// <summary>Reads a command line, lets its verb answer, shows the answer.</summary>
internal sealed class Shell
{
    private readonly Surroundings _around;
    private readonly Desk _desk;

    public Shell(Surroundings around) => (_around, _desk) = (around, new(around, Invoke));

    /// <summary>Never throws: a mistake in the program becomes one line and <see cref="ExitCode.Bug"/>.</summary>
    public ExitCode Run(IReadOnlyList<string> words)
    {
        try
        {
            return Invoke(words);
        }
        catch (LogbookException away)
        {
            return new Printer(_around).Show(Reply.Bad([away.Fault]) with { Code = ExitCode.Store }, words.Contains(GlobalOptions.Json));
        }
        catch (Exception bug)
        {
            _around.Error.WriteLine(_around.InDetail ? bug.ToString() : InShort(bug));
            return ExitCode.Bug;
        }
    }

    private ExitCode Invoke(IReadOnlyList<string> words)
    {
        var parsed = Root(words).Parse(words, new ParserConfiguration { ResponseFileTokenReplacer = null });
        return parsed.Errors.Count > 0 && parsed.Action is not Help
            ? new Printer(_around).Show(UsageFaults.Of(parsed), words.Contains(GlobalOptions.Json))
            : (ExitCode)parsed.Invoke(new InvocationConfiguration
            {
                EnableDefaultExceptionHandler = false,
                ProcessTerminationTimeout = null,
                Output = _around.Out,
                Error = _around.Error,
            });
    }

    /// <summary>Only the verb that is asked for is built, which keeps the start short.</summary>
    private RootCommand Root(IReadOnlyList<string> words)
    {
        var root = new RootCommand("Plans what has to come off an old, scarce car, and records what was done.") { HelpName = "refettle" };
        GlobalOptions.AddTo(root);
        Help.AddTo(root, new(_around), _desk);
        var named = VerbOf(words);
        foreach (var (_, make) in VerbList.Makers.Where(verb => named is null || verb.Key == named))
            root.Add(make(_desk));
        DecimalCommas.RefuseIn(root);
        return root;
    }

    /// <summary>A car or a store may have the name of a verb.</summary>
    private static string? VerbOf(IReadOnlyList<string> words) =>
        words.Where((_, place) => place == 0 || words[place - 1] is not (GlobalOptions.Car or GlobalOptions.Store))
            .FirstOrDefault(VerbList.Makers.ContainsKey);

    private static string InShort(Exception bug) =>
        $"refettle: a mistake in the program, not yours ({bug.GetType().Name}: {bug.Message.ReplaceLineEndings(" ")}). "
        + $"What was recorded before is safe. Set {Surroundings.DetailVariable}=1 to see where it happened, and tell whoever keeps the program.";
}
