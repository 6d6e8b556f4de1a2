using System.CommandLine;
using Refettle.Bench.Derivations;
using Refettle.Peers.Cars;
using Refettle.Peers.Solvers;

namespace Refettle.Bench.Verbs;

/// <summary><c>access</c>: the access planner against other ways to solve the same questions.</summary>
internal static class Access
{
    private static readonly Dictionary<string, IPeer> Peers = new()
    {
        ["highs"] = new PlainHighs(),
        ["cpsat"] = new OrderedCpSat(),
        ["clasp"] = new AnswerSets("clasp", "--configuration=trendy", "--opt-strategy=usc,k,0,5", "--opt-usc-shrink=bin"),
        ["clasp-default"] = new AnswerSets("clasp default"),
        ["loops"] = new LoopCuttingHighs(),
    };

    public static int Run(string[] args) => Make().Parse(args).Invoke();

    private static Command Make()
    {
        var sizes = Several("--sizes", "Parts of the cars", 300, 1000, 5000);
        var goals = Several("--goals", "Goals of the questions", 1, 5, 20);
        var kinds = Several("--kinds", "Kinds of car: realistic, tangled, dense", CarKind.Realistic);
        var seeds = new Option<int>("--seeds") { Description = "Cars of each kind and size", DefaultValueFactory = _ => 5 };
        var first = new Option<int>("--first-seed") { Description = "The first seed", DefaultValueFactory = _ => 1 };
        var peers = Several<string>("--peers", $"Compared with: {string.Join(", ", Peers.Keys)}");
        var most = new Option<double>("--cap")
        { Description = "Seconds a run may take; one that is cut off counts as this", DefaultValueFactory = _ => 20 };
        var command = new Command("access", "What comes off, at least cost: time to the proven answer.")
            { sizes, goals, kinds, seeds, first, peers, most };
        command.SetAction(parsed =>
        {
            var table = new AccessTable([.. parsed.GetValue(peers)!.Select(name => Peers[name])],
                TimeSpan.FromSeconds(parsed.GetValue(most)));
            foreach (var kind in parsed.GetValue(kinds)!)
                foreach (var size in parsed.GetValue(sizes)!)
                    foreach (var count in parsed.GetValue(goals)!)
                        table.Add(kind, size, count, Enumerable.Range(parsed.GetValue(first), parsed.GetValue(seeds)));
            table.Print();
        });
        return command;
    }

    private static Option<T[]> Several<T>(string name, string description, params T[] standard) => new(name)
    {
        Description = description,
        AllowMultipleArgumentsPerToken = true,
        DefaultValueFactory = _ => standard,
        CustomParser = result => [.. result.Tokens.SelectMany(token => token.Value.Split(',')).Select(Parse<T>)],
    };

    private static T Parse<T>(string word) =>
        typeof(T).IsEnum ? (T)Enum.Parse(typeof(T), word, ignoreCase: true) : (T)Convert.ChangeType(word, typeof(T));
}
