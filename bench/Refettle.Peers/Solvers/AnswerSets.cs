using System.Diagnostics;
using System.Text;
using Refettle.Access.Derivation;

namespace Refettle.Peers.Solvers;

/// <summary>The answer set solver clasp (Debian package <c>clasp</c>), run as a process.</summary>
/// <remarks>A stable model holds no fact that rests on a circle, so circular support is excluded by what clasp
/// is, not by a rule written here.</remarks>
public sealed class AnswerSets(string name, params string[] options) : IPeer
{
    public string Name => name;

    public string About =>
        $"answer sets, {(options.Length == 0 ? "as it comes" : string.Join(' ', options))}; ground program in aspif, so no grounding; process start included";

    public static bool IsInstalled =>
        Environment.GetEnvironmentVariable("PATH")!.Split(':').Any(folder => File.Exists(Path.Combine(folder, "clasp")));

    public PeerRun Solve(DerivationProblem problem, TimeSpan most) => PeerRun.Of(problem, most, () =>
    {
        var output = Ask(Program(problem), ["--outf=1", $"--time-limit={(int)Math.Ceiling(most.TotalSeconds)}", .. options]);
        var last = output.LastIndexOf("ANSWER");
        return (last < 0 ? null : WayOf(problem, output[last + 1]), output.Contains("OPTIMUM") || output.Contains("INCONSISTENT"));
    });

    private static List<string> Ask(string program, string[] options)
    {
        using var process =
            Process.Start(new ProcessStartInfo("clasp", options) { RedirectStandardInput = true, RedirectStandardOutput = true })!;
        var output = process.StandardOutput.ReadToEndAsync();
        process.StandardInput.Write(program);
        process.StandardInput.Close();
        process.WaitForExit();
        return [.. output.Result.Split('\n').Select(line => line.TrimEnd())];
    }

    /// <summary>Atoms 1 … facts say that a fact is true, the rest that a way is chosen.</summary>
    private static string Program(DerivationProblem problem)
    {
        var text = new StringBuilder("asp 1 0 0\n");
        for (var way = 0; way < problem.WayCount; way++)
        {
            var chosen = problem.FactCount + way + 1;
            var needs = problem.Needs[way];
            text.Append($"1 1 1 {chosen} 0 {needs.Length}").AppendJoin("", needs.Select(need => $" {need + 1}")).Append('\n');
            text.Append($"1 0 1 {problem.FactOf[way] + 1} 0 1 {chosen}\n");
            text.Append($"4 {Digits(way) + 1} w{way} 1 {chosen}\n");
        }

        foreach (var goal in problem.Goals)
            text.Append($"1 0 0 0 1 -{goal + 1}\n");
        text.Append($"2 0 {problem.WayCount}").AppendJoin("", problem.Cost.Select((cost, way) => $" {problem.FactCount + way + 1} {cost}"))
            .Append('\n');
        return text.Append("0\n").ToString();
    }

    private static int Digits(int number) => number.ToString().Length;

    // Where it chose two ways of a fact at no cost, the first of the two that stands is kept.
    private static int[] WayOf(DerivationProblem problem, string model)
    {
        var chosen = model.Split(' ').Where(word => word.StartsWith('w')).Select(word => int.Parse(word[1..].TrimEnd('.'))).ToList();
        var wayOf = new int[problem.FactCount];
        Array.Fill(wayOf, -1);
        for (var progress = true; progress;)
        {
            progress = false;
            foreach (var way in chosen.Where(way => wayOf[problem.FactOf[way]] < 0 && problem.Needs[way].All(need => wayOf[need] >= 0)))
            {
                wayOf[problem.FactOf[way]] = way;
                progress = true;
            }
        }

        return wayOf;
    }
}
