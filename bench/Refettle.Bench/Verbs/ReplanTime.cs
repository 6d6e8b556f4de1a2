using System.CommandLine;
using System.Diagnostics;
using Refettle.Bench.Schedules;
using Refettle.Solvers.Scheduling;
using Refettle.Timeline;
using Refettle.Timeline.Scheduling;

namespace Refettle.Bench.Verbs;

/// <summary><c>replan</c>: replanning after a finding, against the scheduler with much time and CP-SAT begun from the old starts.</summary>
internal static class ReplanTime
{
    public static int Run(string[] args) => Make().Parse(args).Invoke();

    private static Command Make()
    {
        var size = new Option<int>("--size") { Description = "Activities", DefaultValueFactory = _ => 600 };
        var cases = new Option<int>("--cases") { Description = "Findings", DefaultValueFactory = _ => 20 };
        var seconds = new Option<double>("--seconds")
        { Description = "Seconds for each of the others; 0 leaves them out", DefaultValueFactory = _ => 30 };
        var command = new Command("replan", "Replanning a long project after a finding: milliseconds, finish and moves.")
            { size, cases, seconds };
        command.SetAction(parsed => Table(parsed.GetValue(size), parsed.GetValue(cases), parsed.GetValue(seconds)));
        return command;
    }

    private static int Table(int size, int cases, double seconds)
    {
        for (var warm = 0; warm < 3; warm++)
            new Replanner().Replan(LateFinding.Make(size, 1000 + warm).Question);
        Console.WriteLine(
            "| case | ms | moved | days | above the bound % | above the scheduler % | above CP-SAT from the old starts % |\n|---|---|---|---|---|---|---|");
        var (times, above, faults) = (new List<double>(), new List<double>(), 0);
        for (var seed = 1; seed <= cases; seed++)
        {
            var (question, known) = LateFinding.Make(size, seed);
            var clock = Stopwatch.StartNew();
            var answer = new Replanner().Replan(question);
            times.Add(clock.Elapsed.TotalMilliseconds);
            faults += answer.Schedule is { } schedule ? ScheduleCheck.Of(question.Project, schedule).Count : 1;
            var scheduler = seconds > 0
                ? new ConstraintScheduler().Solve(new(question.Project, [], known), new(TimeSpan.FromSeconds(seconds))).Schedule
                : null;
            var plain = seconds > 0 ? PlainCpSat.Run(question.Project, [.. known.Starts], seconds) : null;
            above.Add(Above(answer.Schedule, scheduler?.Makespan));
            Console.WriteLine(
                $"| {seed} | {times[^1]:0} | {answer.Moved.Count} | {answer.DaysMoved} | {Above(answer.Schedule, answer.Bound):0.00} | {above[^1]:0.00} | {Above(answer.Schedule, plain?.Makespan):0.00} |");
        }

        times.Sort();
        Console.WriteLine(
            $"\n{size} activities, {cases} findings: p95 {times[(int)Math.Ceiling(0.95 * cases) - 1]:0} ms, median {times[cases / 2]:0} ms; at most {above.Max():0.00} % above the scheduler's {seconds:0} s; {faults} faults. {Machine.Line}.");
        return faults == 0 ? 0 : 1;
    }

    private static double Above(Schedule? schedule, int? finish) =>
        schedule is null || finish is null ? double.NaN : 100.0 * (schedule.Makespan - finish.Value) / finish.Value;
}
