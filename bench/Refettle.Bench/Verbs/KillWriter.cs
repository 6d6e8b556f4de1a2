using System.Diagnostics;
using System.Globalization;
using Refettle.Bench.Crash;

namespace Refettle.Bench.Verbs;

/// <summary>Kills a writing process again and again (SIGKILL) and looks after each time. <c>kill-writer
/// [TIMES]</c>, 1,000 when not said.</summary>
internal static class KillWriter
{
    private const int RoundsPerLogbook = 50;

    public static int Run(string[] arguments)
    {
        if (arguments is [NoteWriter.Verb, var path])
            return NoteWriter.Run(path);
        var times = arguments.Length > 0 ? int.Parse(arguments[0], CultureInfo.InvariantCulture) : 1_000;
        var random = new Random(1);
        var (acknowledged, faults) = (0, 0);
        for (var done = 0; done < times; done += RoundsPerLogbook)
        {
            var folder = Directory.CreateTempSubdirectory("refettle-kill-");
            var (heard, wrong) =
                OneLogbook(Path.Combine(folder.FullName, "killed.logbook"), Math.Min(RoundsPerLogbook, times - done), random);
            (acknowledged, faults) = (acknowledged + heard, faults + wrong);
            folder.Delete(recursive: true);
        }

        Console.WriteLine($"killed {times} times; {acknowledged} entries and photos acknowledged, {faults} faults");
        return faults == 0 ? 0 : 1;
    }

    private static (int Acknowledged, int Faults) OneLogbook(string file, int rounds, Random random)
    {
        var (acknowledged, photos) = (new HashSet<Guid>(), new HashSet<string>());
        var faults = 0;
        for (var round = 0; round < rounds; round++)
        {
            using var writer = new NoteWriter("kill-writer", file);
            writer.WaitForOne();
            Wait(TimeSpan.FromMilliseconds(random.Next(60)));
            writer.Kill();
            acknowledged.UnionWith(writer.Acknowledged());
            photos.UnionWith(writer.Photos());
            foreach (var wrong in Aftermath.Look(file, acknowledged, photos))
            {
                Console.WriteLine(wrong);
                faults++;
            }
        }

        return (acknowledged.Count + photos.Count, faults);
    }

    private static void Wait(TimeSpan time)
    {
        var watch = Stopwatch.StartNew();
        while (watch.Elapsed < time)
            Thread.SpinWait(100);
    }
}
