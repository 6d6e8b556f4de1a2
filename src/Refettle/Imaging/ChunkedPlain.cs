using System.Buffers.Binary;

namespace Refettle.Imaging;

/// <summary>Leaves of a PNG file (ISO/IEC 15948) the chunks that make the picture, and which way is up.</summary>
internal static class PngPlain
{
    private static readonly HashSet<string> Kept = ["IHDR", "PLTE", "IDAT", "IEND", "tRNS", "gAMA", "cHRM", "sRGB", "iCCP", "sBIT"];

    public static byte[] Of(ReadOnlySpan<byte> bytes)
    {
        var (kept, facts) = (new MemoryStream(bytes.Length), default(ExifFacts));
        kept.Write(bytes[..8]);
        for (var place = 8; ;)
        {
            if (place + 12 > bytes.Length)
                throw PictureBrokenException.AtEnd;
            var length = BinaryPrimitives.ReadUInt32BigEndian(bytes[place..]);
            if (length > (uint)(bytes.Length - place - 12))
                throw PictureBrokenException.AtEnd;
            var name = System.Text.Encoding.Latin1.GetString(bytes.Slice(place + 4, 4));
            if (Kept.Contains(name))
                kept.Write(bytes.Slice(place, (int)length + 12));
            if (name == "eXIf" && facts.IsEmpty && (facts = ExifFacts.OfChunk(bytes.Slice(place + 8, (int)length))) is { IsEmpty: false })
                kept.Write(Chunk("eXIf"u8, facts.Tiff()));
            place += (int)length + 12;
            if (name == "IEND")
                return kept.ToArray();
        }
    }

    private static byte[] Chunk(ReadOnlySpan<byte> name, byte[] data)
    {
        byte[] chunk = [0, 0, 0, 0, .. name, .. data, 0, 0, 0, 0];
        BinaryPrimitives.WriteUInt32BigEndian(chunk, (uint)data.Length);
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(^4), Check(chunk.AsSpan(4..^4)));
        return chunk;
    }

    /// <summary>The CRC of name and data: PNG, annex D.</summary>
    private static uint Check(ReadOnlySpan<byte> bytes)
    {
        var check = uint.MaxValue;
        foreach (var one in bytes)
        {
            check ^= one;
            for (var bit = 0; bit < 8; bit++)
                check = (check & 1) == 0 ? check >> 1 : (check >> 1) ^ 0xEDB88320;
        }

        return ~check;
    }
}

/// <summary>Leaves of a WebP file (RFC 9649) the chunks that make the picture, and which way is up.</summary>
internal static class WebPPlain
{
    private const byte Exif = 0x08;
    private const byte Xmp = 0x04;

    private static readonly HashSet<string> Kept = ["VP8 ", "VP8L", "VP8X", "ALPH", "ANIM", "ANMF", "ICCP"];

    public static byte[] Of(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length < 12)
            throw PictureBrokenException.AtEnd;
        var end = 8L + BinaryPrimitives.ReadUInt32LittleEndian(bytes[4..]);
        if (end > bytes.Length)
            throw PictureBrokenException.AtEnd;
        var (kept, facts, flags) = (new MemoryStream(bytes.Length), default(ExifFacts), -1);
        kept.Write(bytes[..12]);
        for (var place = 12; place < end;)
        {
            if (place + 8 > end)
                throw PictureBrokenException.AtEnd;
            long length = BinaryPrimitives.ReadUInt32LittleEndian(bytes[(place + 4)..]);
            if (length + (length & 1) > end - place - 8)
                throw PictureBrokenException.AtEnd;
            var chunk = bytes.Slice(place, (int)(8 + length + (length & 1))).ToArray();
            place += chunk.Length;
            var name = System.Text.Encoding.Latin1.GetString(chunk, 0, 4);
            if (name == "VP8X" && length > 0)
            {
                chunk[8] &= unchecked((byte)~(Exif | Xmp));
                flags = (int)kept.Length + 8;
            }

            if (Kept.Contains(name))
                kept.Write(chunk);
            if (name == "EXIF" && flags > 0 && facts.IsEmpty
                && (facts = ExifFacts.OfChunk(chunk.AsSpan(8, (int)length))) is { IsEmpty: false })
                kept.Write(Chunk(facts.Tiff()));
        }

        var plain = kept.ToArray();
        if (!facts.IsEmpty)
            plain[flags] |= Exif;
        BinaryPrimitives.WriteUInt32LittleEndian(plain.AsSpan(4), (uint)plain.Length - 8);
        return plain;
    }

    /// <summary>The data has an even length, so no byte fills it up.</summary>
    private static byte[] Chunk(byte[] data)
    {
        byte[] chunk = [.. "EXIF"u8, 0, 0, 0, 0, .. data];
        BinaryPrimitives.WriteUInt32LittleEndian(chunk.AsSpan(4), (uint)data.Length);
        return chunk;
    }
}
