using System.CommandLine;
using CsvHelper;
using Refettle.Peers.Projects;
using Refettle.Solvers.Scheduling;
using Refettle.Timeline;
using Refettle.Timeline.Scheduling;

namespace Refettle.Bench.Verbs;

/// <summary><c>psplib</c>: schedules every published instance of a folder; a line of CSV each. Fails when a schedule is wrong, or an
/// answer contradicts the published finishes.</summary>
internal static class Psplib
{
    private const string Known = "best_known.csv";

    public static int Run(string[] args) => Make().Parse(args).Invoke();

    private static Command Make()
    {
        var dir = new Option<DirectoryInfo>("--dir") { Description = "Folder of .sm or .sch files", Required = true };
        var seconds = new Option<double>("--seconds") { Description = "Seconds for each instance", DefaultValueFactory = _ => 10 };
        var workers = new Option<int>("--workers") { Description = "Cores to use", DefaultValueFactory = _ => 2 };
        var seed = new Option<int>("--seed") { Description = "Seed of the search", DefaultValueFactory = _ => 1 };
        var every = new Option<int>("--every") { Description = "Take only every n-th instance", DefaultValueFactory = _ => 1 };
        var processor = new Option<bool>("--processor-time")
        { Description = "Count the processor's time over the cores used, not the wall's: for a machine that is busy" };
        var known = new Option<FileInfo>("--known")
        { Description = $"Published finishes to compare with; {Known} beside the folder unless told" }
            .AcceptExistingOnly();
        var command = new Command("psplib", "Published project-scheduling instances: makespan, bound, status, seconds.")
            { dir, seconds, workers, seed, every, processor, known };
        command.SetAction(parsed =>
        {
            var files = parsed.GetValue(dir)!.Exists ? PublishedProject.Files(parsed.GetValue(dir)!.FullName) : [];
            if (files.Count == 0)
            {
                Console.Error.WriteLine($"{parsed.GetValue(dir)}: no file ending in {string.Join(" or ", PublishedProject.Endings)}.");
                return 2;
            }

            var limits = new ScheduleLimits(TimeSpan.FromSeconds(parsed.GetValue(seconds)), parsed.GetValue(seed), null,
                parsed.GetValue(workers));
            var clock = parsed.GetValue(processor) ? new ProcessorTime(limits.Workers) : TimeProvider.System;
            return Finishes(parsed.GetValue(dir)!, parsed.GetValue(known)) is { } published
                ? All(files.Where((_, place) => place % parsed.GetValue(every) == 0), limits, clock, published)
                : 2;
        });
        return command;
    }

    private static IReadOnlyDictionary<string, PublishedFinish>? Finishes(DirectoryInfo dir, FileInfo? known)
    {
        known ??= new(Path.Combine(dir.Parent?.FullName ?? "", Known));
        if (!known.Exists)
            return new Dictionary<string, PublishedFinish>();
        try
        {
            using var text = known.OpenText();
            return PublishedFinish.Read(text, dir.Name);
        }
        catch (Exception fault) when (fault is CsvHelperException or FormatException or IOException)
        {
            var first = fault.Message.Split('\n')[0].Trim();
            Console.Error.WriteLine($"{known}: no list of published finishes (set, instance, best_lb, best_ub): {first}");
            return null;
        }
    }

    private static int All(IEnumerable<string> files, ScheduleLimits limits, TimeProvider clock,
        IReadOnlyDictionary<string, PublishedFinish> published)
    {
        var tally = new PsplibTally();
        Console.WriteLine("instance,makespan,bound,status,seconds");
        foreach (var file in files)
        {
            var name = Path.GetFileName(file);
            try
            {
                One(name, PublishedProject.Read(file), limits, clock, tally,
                    published.TryGetValue(name, out var finish) ? finish : null);
            }
            catch (Exception fault) when (fault is FormatException or IOException or IndexOutOfRangeException
                or ArgumentOutOfRangeException)
            {
                tally.Unread++;
                Console.Error.WriteLine($"{name}: cannot be read: {fault.Message}");
            }
        }

        Console.Error.WriteLine(tally.Line);
        return tally.Faults + tally.Unread == 0 ? 0 : 1;
    }

    private static void One(
        string name, Project project, ScheduleLimits limits, TimeProvider clock, PsplibTally tally, PublishedFinish? published)
    {
        var begin = clock.GetTimestamp();
        var answer = new ConstraintScheduler(clock).Solve(new(project), limits);
        var seconds = clock.GetElapsedTime(begin).TotalSeconds;
        List<string> faults = [.. answer.Schedule is { } schedule ? ScheduleCheck.Of(project, schedule).Select(fault => $"{fault}") : []];
        if (published?.ContradictedBy(answer) is { } contradiction)
            faults.Add(contradiction);
        foreach (var fault in faults)
            Console.Error.WriteLine($"{name}: {fault}");
        tally.Add(project, answer, seconds, faults.Count, published is not null);
        var status = answer.Status.ToString().ToLowerInvariant();
        var bound = answer.Status == ScheduleStatus.Impossible ? "" : $"{answer.Bound}";
        Console.WriteLine($"{name},{answer.Schedule?.Makespan},{bound},{status},{seconds:0.000}");
    }
}

/// <summary>What a run over a folder comes to.</summary>
internal sealed class PsplibTally
{
    private int _instances;
    private int _proven;
    private int _impossible;
    private int _without;
    private int _compared;
    private double _deviation;
    private double _seconds;
    private double _slowest;

    public int Unread { get; set; }

    public int Faults { get; private set; }

    public string Line =>
        $"{_instances} instances: {_proven} proven, {_impossible} proven impossible, {_without} without a schedule, {_compared} compared with published finishes, {Faults} faults, {Unread} unread; "
        + $"mean {_deviation / Math.Max(1, _instances - _impossible - _without):0.000} % above the critical path; mean {_seconds / Math.Max(1, _instances):0.000} s, slowest {_slowest:0.00} s. {Machine.Line}.";

    public void Add(Project project, ScheduleAnswer answer, double seconds, int faults, bool isCompared)
    {
        _instances++;
        _compared += isCompared ? 1 : 0;
        _seconds += seconds;
        _slowest = Math.Max(_slowest, seconds);
        Faults += faults;
        if (answer.Schedule is not { } schedule)
        {
            _ = answer.Status == ScheduleStatus.Impossible ? _impossible++ : _without++;
            return;
        }

        _proven += answer.Status == ScheduleStatus.Optimal ? 1 : 0;
        var path = CriticalPath.Length(project);
        _deviation += path == 0 ? 0 : 100.0 * (schedule.Makespan - path) / path;
    }
}
