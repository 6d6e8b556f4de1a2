using System.Diagnostics;
using System.Globalization;
using Refettle.Bench.Crash;

namespace Refettle.Bench.Verbs;

/// <summary>Lets the power fail at random moments of a writing process and looks at what the disk would hold. <c>power-loss [TIMES]</c>, 1,000 when
/// not said. Linux with a C compiler.</summary>
/// <remarks>The writer runs on a file layer that remembers what was synced (forgetful.c). At each moment the writer is stopped and its
/// files are copied three ways in turn: only what was synced; synced blocks mixed at random with unsynced ones, as a disk that was at work
/// may leave them; everything, as after a killed process. Names that were not synced with their folder are gone in the first two.</remarks>
internal static class PowerLoss
{
    private const int MomentsPerLogbook = 100;
    private const int Sector = 512;

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
        Console.WriteLine($"power failed {times} times; {tally.Acknowledged} entries acknowledged, {tally.Ahead} times more was written than synced, {tally.Faults} faults");
        return tally.Faults == 0 ? 0 : 1;
    }

    private static void OneLogbook(string folder, string layer, int moments, Random random, Tally tally)
    {
        var (live, kept, after) = (Made(folder, "live"), Made(folder, "kept"), Path.Combine(folder, "after"));
        using var writer = new NoteWriter("power-loss", Path.Combine(live, "x.logbook"),
            ("LD_PRELOAD", layer), ("FORGETFUL_WATCH", live), ("FORGETFUL_KEPT", kept));
        writer.WaitForOne();
        for (var moment = 0; moment < moments; moment++)
        {
            Thread.Sleep(random.Next(30));
            writer.Stop();
            var acknowledged = writer.Acknowledged();
            tally.Ahead += Leave(live, kept, after, (Left)(moment % 3), random) ? 1 : 0;
            writer.Continue();
            foreach (var wrong in Aftermath.Look(Path.Combine(after, "x.logbook"), acknowledged))
            {
                Console.WriteLine($"{(Left)(moment % 3)}: {wrong}");
                tally.Faults++;
            }
        }

        tally.Acknowledged += writer.Acknowledged().Length;
    }

    /// <summary>Puts into a folder what the disk would hold.</summary>
    /// <returns>Whether a file had been written further than it was synced.</returns>
    private static bool Leave(string live, string kept, string after, Left left, Random random)
    {
        if (Directory.Exists(after))
            Directory.Delete(after, recursive: true);
        Directory.CreateDirectory(after);
        var names = File.Exists(Path.Combine(kept, "names")) ? File.ReadAllLines(Path.Combine(kept, "names")) : [];
        var ahead = false;
        foreach (var name in Directory.GetFiles(live).Select(file => Path.GetFileName(file)).Where(name => !name.EndsWith("-shm", StringComparison.Ordinal)))
        {
            var written = File.ReadAllBytes(Path.Combine(live, name));
            var synced = names.Contains(name) && File.Exists(Path.Combine(kept, name)) ? File.ReadAllBytes(Path.Combine(kept, name)) : null;
            ahead |= synced is null || !written.AsSpan().SequenceEqual(synced);
            if ((left == Left.Everything ? written : left == Left.Synced ? synced : Mixed(synced, written, random)) is { } bytes)
                File.WriteAllBytes(Path.Combine(after, name), bytes);
        }

        return ahead;
    }

    private static byte[]? Mixed(byte[]? synced, byte[] written, Random random)
    {
        if (synced is null)
            return null;
        var mixed = new byte[Math.Max(synced.Length, written.Length)];
        for (var at = 0; at < mixed.Length; at += Sector)
        {
            var source = random.Next(2) == 0 && at < written.Length || at >= synced.Length ? written : synced;
            var length = Math.Clamp(source.Length - at, 0, Sector);
            if (at < synced.Length || random.Next(2) == 0)
                source.AsSpan(at, length).CopyTo(mixed.AsSpan(at));
        }

        return mixed;
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

    private enum Left
    {
        Synced,
        Mixed,
        Everything,
    }

    private sealed class Tally
    {
        public int Acknowledged { get; set; }

        public int Ahead { get; set; }

        public int Faults { get; set; }
    }
}
