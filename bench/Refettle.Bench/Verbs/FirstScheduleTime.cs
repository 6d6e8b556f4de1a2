using System.CommandLine;
using System.Diagnostics;
using Refettle.Bench.Schedules;
using Refettle.Peers.Projects;
using Refettle.Timeline;
using Refettle.Timeline.Scheduling;

namespace Refettle.Bench.Verbs;

/// <summary><c>first-schedule</c>: the schedule that is shown at once, against CP-SAT that begins from nothing.</summary>
internal static class FirstScheduleTime
{
    public static int Run(string[] args) => Make().Parse(args).Invoke();

    private static Command Make()
    {
        var size = new Option<int>("--size") { Description = "Activities", DefaultValueFactory = _ => 600 };
        var seeds = new Option<int>("--seeds") { Description = "Projects", DefaultValueFactory = _ => 10 };
        var seconds = new Option<double>("--seconds")
        { Description = "Seconds CP-SAT may take for a schedule as good", DefaultValueFactory = _ => 30 };
        var command = new Command("first-schedule",
            "A first schedule of a long project: milliseconds, and finish against CP-SAT from nothing.") { size, seeds, seconds };
        command.SetAction(parsed => Table(parsed.GetValue(size), parsed.GetValue(seeds), parsed.GetValue(seconds)));
        return command;
    }

    /// <summary>The median of five, what CP-SAT left behind cleared away first.</summary>
    private static (ScheduleAnswer First, double Milliseconds) Measured(Project project)
    {
        GC.Collect();
        var rounds = Enumerable.Range(0, 5).Select(_ =>
        {
            var clock = Stopwatch.StartNew();
            var first = new FirstScheduler().Solve(new(project), new(TimeSpan.FromSeconds(30)));
            return (First: first, clock.Elapsed.TotalMilliseconds);
        }).OrderBy(round => round.TotalMilliseconds).ToList();
        return rounds[2];
    }

    private static int Table(int size, int seeds, double seconds)
    {
        // Once before the clock counts, so that the first project does not pay for compiling.
        for (var warm = 0; warm < 5; warm++)
            new FirstScheduler().Solve(new(ProjectGenerator.Restoration(size, 1000 + warm)), new(TimeSpan.FromSeconds(30)));
        Console.WriteLine(
            "| project | first ms | above the bound % | CP-SAT from nothing: first schedule ms | as good after ms | times slower |\n|---|---|---|---|---|---|");
        var (times, faults) = (new List<double>(), 0);
        for (var seed = 1; seed <= seeds; seed++)
        {
            var project = ProjectGenerator.Restoration(size, seed);
            var (first, milliseconds) = Measured(project);
            times.Add(milliseconds);
            faults += ScheduleCheck.Of(project, first.Schedule!).Count;
            var (any, asGood) = PlainCpSat.TimesTo(project, first.Schedule!.Makespan, seconds);
            Console.WriteLine(
                $"| {seed} | {times[^1]:0.0} | {100.0 * (first.Schedule.Makespan - first.Bound) / first.Bound:0.00} | {any} | {asGood} | {(asGood is { } after ? after / times[^1] : 1000 * seconds / times[^1]):0}{(asGood is null ? " at least" : "")} |");
        }

        times.Sort();
        Console.WriteLine(
            $"\n{size} activities: median {times[times.Count / 2]:0.0} ms, slowest {times[^1]:0.0} ms, {faults} faults. {Machine.Line}.");
        return faults == 0 ? 0 : 1;
    }
}
