using System.CommandLine;

namespace Refettle.Cli;

/// <summary>Options that every verb has.</summary>
internal static class GlobalOptions
{
    public const string Json = "--json";
    public const string Car = "--car";
    public const string Store = "--store";

    public static void AddTo(RootCommand root)
    {
        root.Add(new Option<bool>(Json) { Description = "Answer as JSON (docs/cli.md has the shapes).", Recursive = true });
        root.Add(new Option<string>(Car)
        { Description = "The car; by default the one written to last.", HelpName = "id", Recursive = true });
        root.Add(new Option<string>(Store)
        {
            Description = $"The file that keeps the logbooks; by default ${Surroundings.StoreVariable} or data/refettle.db.",
            HelpName = "path",
            Recursive = true
        });
    }
}
