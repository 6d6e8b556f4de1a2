using System.Diagnostics;
using System.Globalization;
using Refettle.Bench.Fuzzing;

namespace Refettle.Bench.Verbs;

/// <summary>Changed inputs for everything that reads from outside: <c>fuzz [INPUTS] [SEED] [TARGET]</c>, 1,000,000 from seed 1 for all
/// targets when not said. Run from the checkout. Exits with 1 after a crash, an unsound answer, an input that took over a second or made
/// its reader allocate 300 MB, or more than 500 MB of memory at once.</summary>
internal static class Fuzz
{
    /// <summary>Side by side; always as many, so that a seed gives the same inputs on every machine.</summary>
    private const int Lanes = 4;

    private const int Backups = 1_000;
    private const long MostMegabytes = 500;

    public static int Run(string[] arguments)
    {
        var inputs = arguments.Length > 0 ? int.Parse(arguments[0], CultureInfo.InvariantCulture) : 1_000_000;
        var seed = arguments.Length > 1 ? int.Parse(arguments[1], CultureInfo.InvariantCulture) : 1;
        using var targets = new Targets(Environment.CurrentDirectory);
        var chosen = targets.All.Concat(targets.Routes.All)
            .Where(target => arguments.Length < 3 || target.Name.StartsWith(arguments[2], StringComparison.Ordinal)).ToList();
        Console.WriteLine("target                 inputs  inputs/s  slowest, ms  most allocated, MB  peak, MB  faults");
        var faults = chosen.SelectMany(target => Side(target,
            Math.Max(Lanes, (int)((long)inputs * target.Share / (arguments.Length < 3 ? 10_000 : target.Share))), seed)).ToList();
        if (arguments.Length < 3)
            faults.AddRange(Backed(targets, Math.Max(1, inputs / Backups), new(new(seed))));
        faults.ForEach(Console.WriteLine);
        return faults.Count == 0 ? 0 : 1;
    }

    private static List<string> Side(Target target, int count, int seed) => Told(target.Name, count, () =>
    {
        var lanes = Enumerable.Range(0, Lanes).Select(_ => new Lane()).ToList();
        Parallel.For(0, Lanes, i =>
        {
            var mutator = new Mutator(new((seed * Lanes) + i));
            lanes[i].Run(target.Name, count / Lanes, () => target.Next(mutator));
        });
        return lanes;
    });

    /// <summary>They lie in one place, so one after the other.</summary>
    private static List<string> Backed(Targets targets, int count, Mutator mutator) => Told("backups", count, () =>
    {
        var lane = new Lane();
        lane.Run("backups", count, () => targets.RestoreChanged(mutator));
        return [lane];
    });

    private static List<string> Told(string name, int count, Func<List<Lane>> run)
    {
        PeakMemory.Forget();
        var started = Stopwatch.GetTimestamp();
        var lanes = run();
        var (took, peak) = (Stopwatch.GetElapsedTime(started), PeakMemory.Read());
        var faults = lanes.SelectMany(lane => lane.Faults).ToList();
        if (peak > MostMegabytes)
            faults.Add($"{name}: {peak} MB of memory");
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{name,-20} {count,8} {count / took.TotalSeconds,9:0} {lanes.Max(lane => lane.Slowest).TotalMilliseconds,12:0.0} {lanes.Max(lane => lane.MostAllocated) / 1e6,19:0.0} {peak,9} {faults.Count,7}"));
        return faults;
    }
}
