using System.Diagnostics;
using Refettle.Bench.Forecasts;
using Refettle.Forecast;

namespace Refettle.Bench.Verbs;

/// <summary><c>forecast</c>: futures a second, against the same simulation in NumPy.</summary>
internal static class Forecast
{
    public static int Run(string[] args)
    {
        foreach (var activities in new[] { 200, 400, 600 })
        {
            var question = GarageProject.Ask(activities, 1, 200_000);
            Forecaster.Finishes(question with { Futures = 20_000 });
            var clock = Stopwatch.StartNew();
            var cpu = Process.GetCurrentProcess().TotalProcessorTime;
            var finishes = Forecaster.Finishes(question).Value;
            var used = Process.GetCurrentProcess().TotalProcessorTime - cpu;
            Console.WriteLine($"{activities}: cpu {2 * question.Futures / used.TotalSeconds:0} {question.Futures / clock.Elapsed.TotalSeconds:0} futures/s; median {finishes.Order().ElementAt(finishes.Length / 2) / 1440.0:0.0} days; unfinished {finishes.Count(finish => finish == Forecaster.NotFinished)}");
        }

        return 0;
    }
}
