using System.Collections.Concurrent;
using System.Security.Cryptography;
using Refettle.Imaging;

namespace Refettle.Storage;

/// <summary>How much of a picture has arrived.</summary>
/// <param name="Received">Bytes that are here.</param>
/// <param name="Kept">It is whole, its hash is right and it is on the disk.</param>
public sealed record PhotoProgress(long Received, bool Kept);

/// <summary>Pictures beside a logbook, each in a file named by the SHA-256 of its bytes: never changed, never written twice.</summary>
/// <remarks>A picture arrives in pieces, in a file of its own until it is whole and right; then it is flushed to the disk, renamed, and the
/// folder flushed. Whatever happens before that, the piece that is here can be added to or begun anew.</remarks>
public sealed class PhotoStore(string folder)
{
    /// <summary>The most that one picture may have, in bytes.</summary>
    public const long MostBytes = 40_000_000;

    private readonly ConcurrentDictionary<string, Lock> _locks = new();

    public string Folder => folder;

    /// <summary>The pictures that belong to the logbook at a path.</summary>
    public static PhotoStore Beside(string logbook) => new(logbook + ".photos");

    /// <summary>Where a picture is; null when it is not here, or not whole yet.</summary>
    public string? PathOf(string hash) => ContentHash.IsValid(hash) && File.Exists(Whole(hash)) ? Whole(hash) : null;

    /// <summary>The hashes of all pictures that are here.</summary>
    public IEnumerable<string> All() => Directory.Exists(folder)
        ? Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories).Select(Path.GetFileName).OfType<string>().Where(ContentHash.IsValid)
        : [];

    public PhotoProgress Progress(string hash) => PathOf(hash) is { } path
        ? new(new FileInfo(path).Length, true)
        : new(File.Exists(Partial(hash)) ? new FileInfo(Partial(hash)).Length : 0, false);

    /// <summary>Takes a piece of a picture. Sending a piece again does no harm; a piece that does not join what is here is not taken, and
    /// the answer says where to go on.</summary>
    /// <param name="from">Where in the picture the piece begins.</param>
    /// <param name="of">The picture's whole length in bytes.</param>
    public Result<PhotoProgress> Receive(string hash, long from, long of, ReadOnlySpan<byte> piece)
    {
        if (Wrong(hash, from, of, piece.Length) is { } fault)
            return Result<PhotoProgress>.Bad(fault);
        lock (_locks.GetOrAdd(hash, _ => new()))
        {
            try
            {
                var here = Progress(hash);
                if (here.Kept || from > here.Received)
                    return Result<PhotoProgress>.Good(here);
                var length = Write(hash, from, piece);
                return length < of ? Result<PhotoProgress>.Good(new(length, false)) : Finish(hash, of);
            }
            catch (Exception problem) when (DiskFaults.IsOfDisk(problem))
            {
                return Result<PhotoProgress>.Bad(DiskFaults.Of(folder, problem));
            }
        }
    }

    /// <summary>Keeps a whole picture.</summary>
    /// <returns>Its hash.</returns>
    public Result<string> Keep(ReadOnlySpan<byte> bytes)
    {
        var hash = ContentHash.Of(bytes);
        var kept = Receive(hash, 0, bytes.Length, bytes);
        return kept.IsGood ? Result<string>.Good(hash) : Result<string>.Bad(kept.Faults);
    }

    /// <summary>Copies what another place does not have yet. A picture that no longer has its hash is left out and told of; the others are copied.</summary>
    /// <returns>How many are there then.</returns>
    public Result<int> CopyTo(PhotoStore other)
    {
        var faults = new List<Fault>();
        foreach (var hash in All().Where(hash => other.PathOf(hash) is null))
        {
            try
            {
                var bytes = File.ReadAllBytes(Whole(hash));
                var kept = other.Receive(hash, 0, bytes.Length, bytes);
                faults.AddRange(kept.Faults);
            }
            catch (Exception problem) when (DiskFaults.IsOfDisk(problem))
            {
                faults.Add(DiskFaults.Of(folder, problem));
            }
        }

        return faults.Count > 0 ? Result<int>.Bad(faults) : Result<int>.Good(other.All().Count());
    }

    private static Fault? Wrong(string hash, long from, long of, int piece)
    {
        if (!ContentHash.IsValid(hash))
            return new("photo", "it is not named by a hash", "Name it by the SHA-256 of its bytes in small hexadecimal.");
        if (of is <= 0 or > MostBytes)
            return new($"photo {hash}", $"it has {of} bytes", $"Send 1 to {MostBytes} bytes; make it smaller first.");
        return from < 0 || piece == 0 || from + piece > of
            ? new($"photo {hash}", $"a piece of {piece} bytes from {from} of {of}", "Send pieces that lie within the picture.")
            : null;
    }

    private long Write(string hash, long from, ReadOnlySpan<byte> piece)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(Partial(hash))!);
        using var file = new FileStream(Partial(hash), FileMode.OpenOrCreate, FileAccess.Write, FileShare.None);
        file.Position = from;
        file.Write(piece);
        return file.Length;
    }

    private Result<PhotoProgress> Finish(string hash, long of)
    {
        var bytes = File.ReadAllBytes(Partial(hash));
        if (Refused(hash, bytes, of) is { } fault)
        {
            File.Delete(Partial(hash));
            return Result<PhotoProgress>.Bad(fault);
        }

        using (var file = new FileStream(Partial(hash), FileMode.Open, FileAccess.ReadWrite, FileShare.None))
            file.Flush(flushToDisk: true);
        Directory.CreateDirectory(Path.GetDirectoryName(Whole(hash))!);
        File.Move(Partial(hash), Whole(hash), overwrite: true);
        FolderSync.Flush(Path.GetDirectoryName(Whole(hash))!);
        FolderSync.Flush(folder);
        return Result<PhotoProgress>.Good(new(of, true));
    }

    /// <summary>What carries more than the picture, such as the place where it was taken, is not kept, whoever sends it.</summary>
    private static Fault? Refused(string hash, byte[] bytes, long of)
    {
        if (bytes.LongLength != of || Convert.ToHexStringLower(SHA256.HashData(bytes)) != hash)
            return new($"photo {hash}", "what arrived has another hash", "It was damaged on the way; send it again from the beginning.");
        var plain = PictureFile.Plain(bytes);
        if (!plain.IsGood)
            return plain.Faults[0] with { Place = $"photo {hash}" };
        return plain.Value.AsSpan().SequenceEqual(bytes)
            ? null
            : new($"photo {hash}", "it carries more than the picture (place, camera, a film)", "Take that out before it is sent.");
    }

    private string Whole(string hash) => Path.Combine(folder, hash[..2], hash);

    private string Partial(string hash) => Path.Combine(folder, "arriving", hash + ".part");
}
