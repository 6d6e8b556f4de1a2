using System.Diagnostics;
using Refettle.Access;
using Refettle.Peers.Cars;

namespace Refettle.Bench.Verbs;

/// <summary><c>holds</c>: time to say what still holds a part.</summary>
internal static class HoldsTime
{
    public static int Run(string[] args)
    {
        Console.WriteLine("| parts | median ms | slowest ms |\n|---|---|---|");
        foreach (var parts in new[] { 300, 1000, 5000 })
        {
            var car = CarGenerator.Make(new(CarKind.Realistic, parts, 1));
            var names = car.Structure.Parts.Where(part => !part.Fixed).Select(part => part.Id).Take(200).ToList();
            Holds.Of(car, names[0]);
            var times = names.Select(name => Milliseconds(() => Holds.Of(car, name))).Order().ToList();
            Console.WriteLine($"| {parts} | {times[times.Count / 2]:0.00} | {times[^1]:0.00} |");
        }

        Console.WriteLine($"\n200 parts of a realistic car, each asked on its own. {Machine.Line}.");
        return 0;
    }

    private static double Milliseconds(Action ask)
    {
        var clock = Stopwatch.StartNew();
        ask();
        return clock.Elapsed.TotalMilliseconds;
    }
}
