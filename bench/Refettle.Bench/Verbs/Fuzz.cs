using System.Diagnostics;
using System.Globalization;
using Refettle.Bench.Fuzzing;

namespace Refettle.Bench.Verbs;

/// <summary>Changed inputs for everything that reads from outside: <c>fuzz [INPUTS] [SEED]</c>, 1,000,000 from seed 1 when not said. Run from the checkout. Exits with 1 after a
/// crash, an input that took over a second, or more than 500 MB of memory.</summary>
internal static class Fuzz
{
    private const int Backups = 1_000;
    private const long MostMemory = 500_000_000;
    private static readonly TimeSpan TooLong = TimeSpan.FromSeconds(1);

    public static int Run(string[] arguments)
    {
        var inputs = arguments.Length > 0 ? int.Parse(arguments[0], CultureInfo.InvariantCulture) : 1_000_000;
        var seed = arguments.Length > 1 ? int.Parse(arguments[1], CultureInfo.InvariantCulture) : 1;
        var mutator = new Mutator(new(seed));
        var random = new Random(seed);
        var faults = new List<string>();
        using var targets = new Targets(Environment.CurrentDirectory);
        Console.WriteLine("target                inputs   slowest, ms");
        foreach (var target in targets.All)
            Try(target, (int)((long)inputs * target.Share / 1000), mutator, random, faults);
        Try("backups", Math.Max(1, inputs / Backups), () => (null, () => targets.RestoreChanged(mutator)), faults);
        using var process = Process.GetCurrentProcess();
        Console.WriteLine($"most memory: {process.PeakWorkingSet64 / 1_000_000} MB");
        if (process.PeakWorkingSet64 > MostMemory)
            faults.Add("more than 500 MB of memory");
        faults.ForEach(Console.WriteLine);
        return faults.Count == 0 ? 0 : 1;
    }

    private static void Try(Target target, int count, Mutator mutator, Random random, List<string> faults) => Try(target.Name, count, () =>
    {
        var text = mutator.Change(target.Seeds[random.Next(target.Seeds.Count)], target.Seeds[random.Next(target.Seeds.Count)]);
        return (text, () => target.Read(text));
    }, faults);

    private static void Try(string name, int count, Func<(string? Input, Action Read)> next, List<string> faults)
    {
        var slowest = TimeSpan.Zero;
        for (var i = 0; i < count; i++)
        {
            var (input, read) = next();
            var took = Timed(name, input, read, faults);
            // Other work on the machine can make anything slow once.
            if (took > TooLong)
                took = Timed(name, input, read, faults);
            slowest = took > slowest ? took : slowest;
            if (took > TooLong)
                faults.Add($"{name}: {took.TotalSeconds:0.0} s\n--- input\n{input}\n---");
        }

        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name,-20} {count,7} {slowest.TotalMilliseconds,13:0.0}"));
    }

    private static TimeSpan Timed(string name, string? input, Action read, List<string> faults)
    {
        var started = Stopwatch.GetTimestamp();
        try
        {
            read();
        }
        catch (Exception crash)
        {
            faults.Add($"{name}: {crash.GetType().Name}: {crash.Message}\n{Frame(crash)}\n--- input\n{input}\n---");
        }

        return Stopwatch.GetElapsedTime(started);
    }

    private static string? Frame(Exception crash) => crash.StackTrace?.Split('\n').Take(4).Aggregate((above, line) => above + "\n" + line);
}
