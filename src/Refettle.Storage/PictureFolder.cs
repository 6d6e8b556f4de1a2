using System.Security.Cryptography;
using Refettle.Imaging;

namespace Refettle.Storage;

/// <summary>A folder of pictures, each in a file named by the SHA-256 of its bytes, and of pieces
/// that have not come together yet.</summary>
/// <remarks>What arrives lies in a file of its own until it is whole and right; then it is flushed to the disk, renamed, and the folders
/// flushed up to the one in which this folder has its name. Its callers see to it that a picture is written by one at a time.</remarks>
internal sealed class PictureFolder(string folder)
{
    /// <summary>Where a picture lies, or would.</summary>
    public string Whole(string hash) => Path.Combine(folder, hash[..2], hash);

    public bool Has(string hash) => File.Exists(Whole(hash));

    public IEnumerable<string> All() => Directory.Exists(folder)
        ? Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories).Select(Path.GetFileName).OfType<string>()
            .Where(ContentHash.IsValid)
        : [];

    /// <summary>Bytes of a picture that have arrived.</summary>
    public long Arrived(string hash) => File.Exists(Partial(hash)) ? new FileInfo(Partial(hash)).Length : 0;

    /// <returns>Bytes that have arrived with this piece.</returns>
    public long Write(string hash, long from, ReadOnlySpan<byte> piece)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(Partial(hash))!);
        using var file = new FileStream(Partial(hash), FileMode.OpenOrCreate, FileAccess.Write, FileShare.None);
        file.Position = from;
        file.Write(piece);
        return file.Length;
    }

    /// <summary>Forgets the pieces of a picture.</summary>
    public void Forget(string hash)
    {
        if (File.Exists(Partial(hash)))
            File.Delete(Partial(hash));
    }

    /// <summary>All that arrived, once it is right and on the disk; what is not right is thrown away.</summary>
    public Result<byte[]> Checked(string hash, long of)
    {
        var bytes = File.ReadAllBytes(Partial(hash));
        if (Refused(hash, bytes, of) is { } fault)
        {
            Forget(hash);
            return Result<byte[]>.Bad(fault);
        }

        using var file = new FileStream(Partial(hash), FileMode.Open, FileAccess.ReadWrite, FileShare.None);
        file.Flush(flushToDisk: true);
        return Result<byte[]>.Good(bytes);
    }

    /// <summary>Gives what arrived its name, and that a place on the disk.</summary>
    public void Settle(string hash)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(Whole(hash))!);
        File.Move(Partial(hash), Whole(hash), overwrite: true);
        foreach (var name in new[] { Path.GetDirectoryName(Whole(hash))!, folder, Path.GetDirectoryName(Path.GetFullPath(folder))! })
            FolderSync.Flush(name);
    }

    /// <summary>Why bytes are not kept under a hash. What carries more than the picture, such as the place where it was taken, is not
    /// kept, whoever sends it.</summary>
    public static Fault? Refused(string hash, byte[] bytes, long of)
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

    private string Partial(string hash) => Path.Combine(folder, "arriving", hash + ".part");
}
