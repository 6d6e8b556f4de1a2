using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using Refettle.Cli.Views;

namespace Refettle.Cli;

/// <summary>Of the whole command, its verbs by what they are for; of one verb, what it takes.</summary>
internal sealed class Help(Printer printer, Desk desk) : SynchronousCommandLineAction
{
    /// <summary>Who asks for help may have left out what a verb needs.</summary>
    public override bool ClearsParseErrors => true;

    public override int Invoke(ParseResult parseResult) => parseResult.CommandResult.Command is RootCommand root
        ? (int)printer.Show(new(HelpView.Of(root, desk), new { }), asJson: false)
        : new HelpAction().Invoke(parseResult);

    public static void AddTo(RootCommand root, Printer printer, Desk desk)
    {
        var help = new Help(printer, desk);
        root.Options.OfType<HelpOption>().Single().Action = help;
        root.SetAction(help.Invoke);
    }
}
