using System.Diagnostics;
using System.Globalization;
using Refettle.Bench.Crash;

namespace Refettle.Bench.Verbs;

/// <summary>Lets the power fail at random moments of a process that writes entries and photos, and looks at what the disk would
/// hold. <c>power-loss [TIMES]</c>, 1,000 when not said. Linux with a C compiler.</summary>
/// <remarks>The writer runs on a file layer that remembers what was synced (forgetful.c). At each moment the writer is stopped and its
/// files are copied three ways in turn: only what was synced; synced blocks mixed at random with unsynced ones, as a disk that was at work
/// may leave them; everything, as after a killed process. Names that were not synced with their folder are gone in the first two, and with
/// a folder's name all that is in it.</remarks>
internal static class PowerLoss
{
    private const int MomentsPerLogbook = 100;

    public static int Run(string[] arguments)
    {
        if (arguments is [NoteWriter.Verb, var path])
            return NoteWriter.Run(path);
        var times = arguments.Length > 0 ? int.Parse(arguments[0], CultureInfo.InvariantCulture) : 1_000;
        var folder = Directory.CreateTempSubdirectory("refettle-power-").FullName;
        var layer = Compiled(folder);
        var random = new Random(1);
        var tally = new Tally();
        for (var done = 0; done < times; done += MomentsPerLogbook)
            OneLogbook(Path.Combine(folder, $"{done}"), layer, Math.Min(MomentsPerLogbook, times - done), random, tally);
        Directory.Delete(folder, recursive: true);
        Console.WriteLine(
            $"power failed {times} times; {tally.Acknowledged} entries and {tally.Photos} photos acknowledged, {tally.Ahead} times more was written than synced, {tally.Faults} faults");
        return tally.Faults == 0 ? 0 : 1;
    }

    private static void OneLogbook(string folder, string layer, int moments, Random random, Tally tally)
    {
        var (live, kept, after) = (Made(folder, "live"), Made(folder, "kept"), Path.Combine(folder, "after"));
        // The writer locks nothing: what it was about to write when it was stopped is looked at too.
        using var writer = new NoteWriter("power-loss", Path.Combine(live, "x.logbook"),
            ("LD_PRELOAD", layer), ("FORGETFUL_WATCH", live), ("FORGETFUL_KEPT", kept), ("DOTNET_SYSTEM_IO_DISABLEFILELOCKING", "1"));
        writer.WaitForOne();
        var disk = new ForgetfulDisk(live, kept);
        for (var moment = 0; moment < moments; moment++)
        {
            Thread.Sleep(random.Next(30));
            writer.Stop();
            var (acknowledged, photos) = (writer.Acknowledged(), writer.Photos());
            tally.Ahead += disk.Leave(after, (Left)(moment % 3), random) ? 1 : 0;
            writer.Continue();
            foreach (var wrong in Aftermath.Look(Path.Combine(after, "x.logbook"), acknowledged, photos))
            {
                Console.WriteLine($"{(Left)(moment % 3)}: {wrong}");
                tally.Faults++;
            }
        }

        tally.Faults += writer.Ended() ? 1 : 0;
        tally.Acknowledged += writer.Acknowledged().Length;
        tally.Photos += writer.Photos().Length;
    }

    private static string Compiled(string folder)
    {
        var layer = Path.Combine(folder, "forgetful.so");
        var source = Path.Combine(AppContext.BaseDirectory, "Crash", "forgetful.c");
        using var compiler = Process.Start("cc", ["-shared", "-fPIC", "-O2", "-o", layer, source, "-ldl"]);
        compiler.WaitForExit();
        return layer;
    }

    private static string Made(string folder, string name) => Directory.CreateDirectory(Path.Combine(folder, name)).FullName;

    private sealed class Tally
    {
        public int Acknowledged { get; set; }

        public int Photos { get; set; }

        public int Ahead { get; set; }

        public int Faults { get; set; }
    }
}
