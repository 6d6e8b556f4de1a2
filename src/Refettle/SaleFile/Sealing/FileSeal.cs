using System.Security.Cryptography;
using System.Text;

namespace Refettle.SaleFile.Sealing;

/// <summary>Signs a finished file, whatever its form: the digest covers every byte of it, with zeros
/// where the signature then goes.</summary>
public static class FileSeal
{
    private const int Chunk = 1 << 16;

    private static readonly byte[] Place = Encoding.ASCII.GetBytes(RecordLines.BeforeFile + RecordLines.Open);

    /// <param name="file">Can be read, written and sought in; holds one record with an open place for the signature.</param>
    /// <exception cref="InvalidDataException">There is no such place.</exception>
    public static void Close(Stream file, ISealKey key)
    {
        var (digest, place) = Read(file);
        if (place < 0)
            throw new InvalidDataException("The file has no place for its signature.");
        file.Position = place + RecordLines.BeforeFile.Length;
        file.Write(Encoding.ASCII.GetBytes(key.Sign(digest)));
        file.Flush();
    }

    /// <summary>Whole in one pass, a piece at a time: files with photos are large.</summary>
    private static (byte[] Digest, long Place) Read(Stream file)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var buffer = new byte[Place.Length + Chunk];
        var (kept, before, place) = (0, 0L, -1L);
        file.Position = 0;
        while (file.Read(buffer, kept, Chunk) is > 0 and var read)
        {
            hash.AppendData(buffer, kept, read);
            var seen = buffer.AsSpan(0, kept + read);
            if (seen.LastIndexOf(Place) is >= 0 and var found)
                place = before + found;
            var keep = Math.Min(seen.Length, Place.Length - 1);
            before += seen.Length - keep;
            seen[^keep..].CopyTo(buffer);
            kept = keep;
        }

        return (hash.GetHashAndReset(), place);
    }
}
