using System.CommandLine;
using Refettle.Bench.Scopes;
using Refettle.Peers.Cars;
using Refettle.Peers.Solvers;

namespace Refettle.Bench.Verbs;

/// <summary><c>scope</c>: the choice of jobs against other ways to solve it.</summary>
internal static class Scope
{
    private static readonly ILimitedPeer[] Peers = [new PlainHighs(), new OrderedCpSat()];

    public static int Run(string[] args) => Make().Parse(args).Invoke();

    private static Command Make()
    {
        var parts = new Option<int>("--parts") { DefaultValueFactory = _ => 300 };
        var jobs = new Option<int>("--jobs") { DefaultValueFactory = _ => 80 };
        var seeds = new Option<int>("--seeds") { DefaultValueFactory = _ => 5 };
        var kind = new Option<CarKind>("--kind") { DefaultValueFactory = _ => CarKind.Realistic };
        var most = new Option<double>("--cap")
        { Description = "Seconds a peer may take; one that is cut off counts as this", DefaultValueFactory = _ => 20 };
        var command = new Command("scope", "Which jobs are worth doing, within limits of time and money.")
            { parts, jobs, seeds, kind, most };
        command.SetAction(parsed => Measure(
            parsed.GetValue(kind), parsed.GetValue(parts), parsed.GetValue(jobs), parsed.GetValue(seeds),
            TimeSpan.FromSeconds(parsed.GetValue(most))));
        return command;
    }

    private static void Measure(CarKind kind, int parts, int jobs, int seeds, TimeSpan most)
    {
        ScopeCase.Run(new(kind, parts, 0), jobs, [], most);
        Console.WriteLine(
            $"| seed | facts | chosen | status | solve | choose | explain | frontier | {string.Join(" | ", Peers.Select(peer => $"{peer.Name} | ratio"))} |");
        Console.WriteLine($"|---|---|---|---|---|---|---|---|{string.Concat(Peers.Select(_ => "---|---|"))}");
        var cases = new List<ScopeCase>();
        for (var seed = 1; seed <= seeds; seed++)
        {
            var one = ScopeCase.Run(new(kind, parts, seed), jobs, Peers, most);
            cases.Add(one);
            Console.WriteLine(Row(seed, jobs, one));
        }

        foreach (var (peer, number) in Peers.Select((peer, number) => (peer, number)))
            Console.WriteLine(
                $"- {peer.Name}: {peer.About}. Slower in the geometric mean: {Math.Exp(cases.Average(one => Math.Log(one.Peers[number].Time / one.Solve))):0.0} ×.");
        Console.WriteLine(
            $"- {jobs} jobs on {kind.ToString().ToLowerInvariant()} cars of {parts} parts, time and money for the musts and half of what else would be spent without limits. Milliseconds; one run after one that warms up. *Solve* is the same model as the peers'; *choose* adds compiling, plan, order, check; *explain* what each job takes given the rest and what goes first; *frontier* so many points of time. {Machine.Line}.");
    }

    private static string Row(int seed, int jobs, ScopeCase one)
    {
        var peers = one.Peers
            .Select(run => $"{run.Time.TotalMilliseconds:0}{(run.IsProven ? "" : " (cut off)")}{(run.IsFounded ? "" : " circular")} | {run.Time / one.Solve:0.0} ×");
        return $"| {seed} | {one.Facts} | {one.Answer.Chosen.Count} of {jobs} | {one.Answer.Status.ToString().ToLowerInvariant()} | {one.Solve.TotalMilliseconds:0} | {one.Choose.TotalMilliseconds:0} | {one.Explain.TotalMilliseconds:0} | {one.Frontier.TotalMilliseconds:0} ({one.Points}) | {string.Join(" | ", peers)} |";
    }
}
