using Refettle.Checks;
using Refettle.Kits;
using Refettle.Sheets;

namespace Refettle.Bench.Verbs;

/// <summary>Times reading the kits, adding each on all its sides to one car, and checking that car, in processor time.</summary>
internal static class KitTimes
{
    public static int Run(string[] args)
    {
        for (var round = 0; round < 3; round++)
        {
            var watch = new ProcessorWatch();
            var shelf = KitShelf.Load(args.ElementAtOrDefault(0) ?? "kits").Value;
            Console.Write($"{shelf.Kits.Count} kits read in {watch.Lap():0} ms; ");
            var (car, added) = Fill(shelf);
            Console.Write($"{added} added in {watch.Lap():0} ms; ");
            StructureCheck.Of(car);
            Console.WriteLine($"{car.Parts.Count} parts, {car.Joints.Count} joints checked in {watch.Lap():0.0} ms of processor");
        }

        return 0;
    }

    /// <summary>Processor time of this process, from lap to lap.</summary>
    private sealed class ProcessorWatch
    {
        private TimeSpan _last = Environment.CpuUsage.TotalTime;

        public double Lap()
        {
            var (before, now) = (_last, Environment.CpuUsage.TotalTime);
            _last = now;
            return (now - before).TotalMilliseconds;
        }
    }

    private static (Structure Car, int Added) Fill(KitShelf shelf)
    {
        var (car, added) = (shelf.Start, 0);
        foreach (var (kit, spot) in shelf.Kits
            .SelectMany(kit => (kit.Spots.Count == 0 ? [Spot.None] : kit.Spots).Select(spot => (kit, spot))))
        {
            var addition = KitAddition.Propose(car, kit, spot);
            if (!addition.IsGood)
                continue;
            car = car.With(addition.Value.Entry.Added, addition.Value.Entry.Tied);
            added++;
        }

        return (car, added);
    }
}
