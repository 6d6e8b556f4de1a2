using System.CommandLine;
using Refettle.Cli.Verbs;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>The help of the whole command.</summary>
internal static class HelpView
{
    private const int Indent = 2;

    public static IRenderable Of(RootCommand root, Desk desk)
    {
        var options = root.Options.Select(option => (Name: Named(option), (option.Description ?? "").TrimEnd('.'))).ToList();
        var width = Indent + VerbList.Makers.Keys.Concat(options.Select(option => option.Name)).Max(name => name.Length);
        IRenderable[] shown =
        [
            new Text($"{root.Description}\n\nrefettle VERB --help says what a verb takes."),
            .. VerbList.Groups.SelectMany(group =>
                Section(group.Purpose, group.Makers.Select(verb => (verb.Key, InShort(verb.Value(desk).Description ?? ""))), width)),
            .. Section("Options", options, width),
        ];
        return new Rows(shown);
    }

    private static IEnumerable<IRenderable> Section(string title, IEnumerable<(string Name, string Says)> lines, int width)
    {
        var grid = new Grid().AddColumn(new GridColumn { Width = width }.NoWrap()).AddColumn();
        foreach (var (name, says) in lines)
            grid.AddRow(new Text(new string(' ', Indent) + name), new Text(says));
        return [new Text($"\n{title}"), grid];
    }

    private static string Named(Option option) => option.HelpName is { } value ? $"{option.Name} {value}" : option.Name;

    /// <summary>The first clause of the first sentence: the rest is in the help of the verb.</summary>
    private static string InShort(string says) => says.Split(". ")[0].Split("; ")[0].TrimEnd('.');
}
