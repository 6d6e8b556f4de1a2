using Refettle.Access;
using Refettle.Peers.Cars;
using Refettle.Peers.Solvers;

namespace Refettle.Bench.Derivations;

/// <summary>Measures rows and prints them as a Markdown table.</summary>
internal sealed class AccessTable(IReadOnlyList<IPeer> peers, TimeSpan most)
{
    private readonly List<string> _rows = [];
    private readonly List<string> _contradictions = [];
    private readonly List<AccessCase> _all = [];

    public void Add(CarKind kind, int parts, int goals, IEnumerable<int> seeds)
    {
        AccessCase.Run(new(kind, parts, 0), goals, [], most);
        var cases = new List<AccessCase>();
        foreach (var seed in seeds)
        {
            cases.Add(AccessCase.Run(new(kind, parts, seed), goals, peers, most));
            _contradictions.AddRange(cases[^1].Contradictions(peers)
                .Select(what => $"{kind} {parts} parts, {goals} goals, seed {seed}: {what}"));
            Console.Error.WriteLine($"{kind} {parts} {goals} seed {seed}: {Line(cases[^1])}");
        }

        _all.AddRange(cases);
        _rows.Add(Row(kind, parts, goals, cases));
    }

    public void Print()
    {
        var heads = peers.SelectMany(peer => new[] { peer.Name, "ratio" });
        string[] columns = ["car", "parts", "goals", "facts", "proven", "solve", "whole question", .. heads];
        Console.WriteLine(Line(columns));
        Console.WriteLine(Line(columns.Select(_ => "---")));
        foreach (var row in _rows)
            Console.WriteLine(row);
        Console.WriteLine();
        for (var i = 0; i < peers.Count; i++)
            Console.WriteLine(
                $"- {peers[i].Name}: {peers[i].About}. Slower in the geometric mean of all {_all.Count} questions: {Ratio(_all, i):0.0} ×; cut off: {Capped(_all, i)}.");
        Console.WriteLine(
            $"- Medians in milliseconds; a run cut off after {most.TotalSeconds:0} s counts as that. One run; one question of another car before each row warms up. Peers are given the facts that the goals can call for, not the whole car. {Machine.Line}.");
        foreach (var line in _contradictions)
            Console.WriteLine($"- CONTRADICTION: {line}");
    }

    private static string Line(AccessCase one) =>
        $"{one.Plan.Status} {one.Plan.Cost.Total.Value} in {one.Solve.TotalMilliseconds:0.0} ms; "
        + string.Join("; ",
            one.Peers.Select(
                run => $"{run.Cost / 100m} {(run.IsProven ? "" : "not proven ")}{(run.IsFounded ? "" : "circular ")}{run.Time.TotalMilliseconds:0}"));

    private string Row(CarKind kind, int parts, int goals, List<AccessCase> cases)
    {
        var cells = Enumerable.Range(0, peers.Count).SelectMany(i => new[]
        {
            $"{Median(cases.Select(one => one.Peers[i].Time)):0} {(Capped(cases, i) is > 0 and var capped ? $"({capped} cut off)" : "")}".TrimEnd(),
            $"{Ratio(cases, i):0.0} ×",
        });
        var proven = cases.Count(one => one.Plan.Status != PlanStatus.Feasible);
        return Line(
        [
            kind.ToString().ToLowerInvariant(), $"{parts}", $"{goals}", $"{cases.Average(one => one.Problem.FactCount):0}",
            $"{proven} of {cases.Count}",
            $"{Median(cases.Select(one => one.Solve)):0.0}", $"{Median(cases.Select(one => one.Question)):0.0}", .. cells,
        ]);
    }

    private static string Line(IEnumerable<string> cells) => $"| {string.Join(" | ", cells)} |";

    private static double Median(IEnumerable<TimeSpan> times)
    {
        var sorted = times.Select(time => time.TotalMilliseconds).Order().ToList();
        return (sorted[(sorted.Count - 1) / 2] + sorted[sorted.Count / 2]) / 2;
    }

    private static double Ratio(List<AccessCase> cases, int peer) =>
        Math.Exp(cases.Average(one => Math.Log(one.Peers[peer].Time / one.Solve)));

    private static int Capped(List<AccessCase> cases, int peer) => cases.Count(one => !one.Peers[peer].IsProven);
}
