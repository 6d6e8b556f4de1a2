using System.Diagnostics;

namespace Refettle.Bench.Verbs;

/// <summary><c>numbers</c>: every bench number on its own example, text to answer; beside GNU units, which is started
/// for each question it is asked.</summary>
internal static class NumberTimes
{
    private const int Rounds = 201;

    public static int Run(string[] args)
    {
        var times = BenchNumbers.All
            .Select(number => (number.Name, Median: Median(number, number.Example.Split(' ', StringSplitOptions.RemoveEmptyEntries))))
            .OrderByDescending(one => one.Median).ToList();
        Console.WriteLine("| number | median ms |\n|---|---|");
        foreach (var (name, median) in times.Take(5))
            Console.WriteLine($"| {name} | {median:0.000} |");
        var (own, units) = (times.First(one => one.Name == "convert").Median, Units());
        Console.WriteLine($"\n{times.Count} numbers, the five slowest; {times.Count(one => one.Median >= 1)} of them take 1 ms or more. "
            + $"Converting: {own:0.000} ms{(units is { } peer ? $", GNU units {peer:0.0} ms with its start, ratio {peer / own:0}" : "; GNU units is not installed")}. {Machine.Line}.");
        return times.TrueForAll(one => one.Median < 1) ? 0 : 1;
    }

    private static double Median(BenchNumber number, string[] example)
    {
        var times = Enumerable.Range(0, Rounds).Select(_ =>
        {
            var clock = Stopwatch.StartNew();
            if (!BenchNumbers.Answer(number.Name, example).IsGood)
                throw new InvalidOperationException($"The example of {number.Name} does not work.");
            return clock.Elapsed.TotalMilliseconds;
        }).Order().ToList();
        return times[Rounds / 2];
    }

    private static double? Units()
    {
        try
        {
            var times = Enumerable.Range(0, 11).Select(_ =>
            {
                var clock = Stopwatch.StartNew();
                using var units =
                    Process.Start(new ProcessStartInfo("units", ["-t", "48 N m", "lbf ft"]) { RedirectStandardOutput = true })!;
                units.WaitForExit();
                return clock.Elapsed.TotalMilliseconds;
            }).Order().ToList();
            return times[5];
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null;
        }
    }
}
