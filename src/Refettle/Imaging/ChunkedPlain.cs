using System.Buffers.Binary;

namespace Refettle.Imaging;

/// <summary>Leaves of a PNG file (ISO/IEC 15948) the chunks that make the picture.</summary>
internal static class PngPlain
{
    private static readonly HashSet<string> Kept = ["IHDR", "PLTE", "IDAT", "IEND", "tRNS", "gAMA", "cHRM", "sRGB", "iCCP", "sBIT"];

    public static byte[] Of(ReadOnlySpan<byte> bytes)
    {
        var kept = new MemoryStream(bytes.Length);
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
            place += (int)length + 12;
            if (name == "IEND")
                return kept.ToArray();
        }
    }
}

/// <summary>Leaves of a WebP file (RFC 9649) the chunks that make the picture.</summary>
internal static class WebPPlain
{
    private const int ExifAndXmp = 0x08 | 0x04;

    private static readonly HashSet<string> Kept = ["VP8 ", "VP8L", "VP8X", "ALPH", "ANIM", "ANMF", "ICCP"];

    public static byte[] Of(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length < 12)
            throw PictureBrokenException.AtEnd;
        var end = 8L + BinaryPrimitives.ReadUInt32LittleEndian(bytes[4..]);
        if (end > bytes.Length)
            throw PictureBrokenException.AtEnd;
        var kept = new MemoryStream(bytes.Length);
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
                chunk[8] &= unchecked((byte)~ExifAndXmp);
            if (Kept.Contains(name))
                kept.Write(chunk);
        }

        var plain = kept.ToArray();
        BinaryPrimitives.WriteUInt32LittleEndian(plain.AsSpan(4), (uint)plain.Length - 8);
        return plain;
    }
}
