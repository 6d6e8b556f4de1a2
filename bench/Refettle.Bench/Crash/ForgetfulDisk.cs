namespace Refettle.Bench.Crash;

/// <summary>What of a folder the disk holds when the power fails.</summary>
internal enum Left
{
    /// <summary>Only what was synced.</summary>
    Synced,

    /// <summary>Synced sectors and later ones at random.</summary>
    Mixed,

    /// <summary>All that was written.</summary>
    Everything,
}

/// <summary>A folder whose writer runs on forgetful.c.</summary>
/// <param name="live">The folder.</param>
/// <param name="kept">What the layer remembers.</param>
internal sealed class ForgetfulDisk(string live, string kept)
{
    private const int Sector = 512;

    /// <summary>Puts into a folder what the disk would hold. The writer is stopped.</summary>
    /// <returns>Whether a file had been written further than it was synced.</returns>
    public bool Leave(string after, Left left, Random random)
    {
        if (Directory.Exists(after))
            Directory.Delete(after, recursive: true);
        Directory.CreateDirectory(after);
        var written = Written();
        var synced = Synced();
        foreach (var (name, bytes) in left == Left.Everything ? written : synced)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(Path.Combine(after, name))!);
            File.WriteAllBytes(Path.Combine(after, name),
                left == Left.Mixed && written.TryGetValue(name, out var later) ? Mixed(bytes, later, random) : bytes);
        }

        return written.Any(file => !synced.TryGetValue(file.Key, out var bytes) || !bytes.AsSpan().SequenceEqual(file.Value));
    }

    /// <summary>Files by their path in the folder. The index of the log is memory, not disk.</summary>
    private Dictionary<string, byte[]> Written() => Directory.GetFiles(live, "*", SearchOption.AllDirectories)
        .Where(file => !file.EndsWith("-shm", StringComparison.Ordinal))
        .ToDictionary(file => Path.GetRelativePath(live, file), File.ReadAllBytes);

    /// <summary>What can be reached by names that were synced, as far as it was synced.</summary>
    private Dictionary<string, byte[]> Synced()
    {
        var found = new Dictionary<string, byte[]>();
        var root = Path.Combine(kept, "root");
        if (File.Exists(root))
            Reach(root, "", found);
        return found;
    }

    private void Reach(string folder, string path, Dictionary<string, byte[]> found)
    {
        foreach (var line in File.ReadAllLines(folder).Select(line => line.Split(' ', 3))
            .Where(line => !line[2].EndsWith("-shm", StringComparison.Ordinal)))
        {
            var (memory, name) = (Path.Combine(kept, line[0] + line[1]), Path.Combine(path, line[2]));
            if (line[0] == "d" && File.Exists(memory))
                Reach(memory, name, found);
            else if (line[0] == "f" && File.Exists(memory))
                found[name] = File.ReadAllBytes(memory);
        }
    }

    private static byte[] Mixed(byte[] synced, byte[] written, Random random)
    {
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
}
