using System.Buffers.Binary;

namespace Refettle.Imaging;

/// <summary>Leaves of a JPEG file (ITU-T T.81, annex B) what is needed to show it.</summary>
internal static class JpegPlain
{
    private const byte StartOfScan = 0xDA;
    private const byte EndOfImage = 0xD9;
    private const byte Jfif = 0xE0;
    private const int JfifLength = 16;

    public static byte[] Of(ReadOnlySpan<byte> bytes)
    {
        var kept = new MemoryStream(bytes.Length);
        kept.Write([0xFF, 0xD8]);
        if (ExifFacts.OfJpeg(bytes) is { IsEmpty: false } facts)
            kept.Write(facts.Segment());
        for (var place = 2; ;)
        {
            var marker = Marker(bytes, ref place);
            if (marker == EndOfImage)
                break;
            var length = IsAlone(marker) ? 0 : Length(bytes, place);
            var segment = bytes.Slice(place, length);
            place += length;
            if (!IsKept(marker, segment))
                continue;
            kept.Write([0xFF, marker]);
            kept.Write(marker == Jfif ? Head(segment) : segment);
            if (marker == StartOfScan)
                place = CopyScan(bytes, place, kept);
        }

        kept.Write([0xFF, EndOfImage]);
        return kept.ToArray();
    }

    /// <summary>Frames, tables and scans (table B.1); of what carries data of applications JFIF, the
    /// colour profile and Adobe's colour transform. Comments go, and so does what the standard
    /// reserves: anything can stand in it.</summary>
    private static bool IsKept(byte marker, ReadOnlySpan<byte> segment) => marker switch
    {
        Jfif => segment.Length >= JfifLength && segment[2..].StartsWith("JFIF\0"u8),
        0xE2 => segment[2..].StartsWith("ICC_PROFILE\0"u8),
        0xEE => segment[2..].StartsWith("Adobe"u8),
        0xC8 => false,
        >= 0xC0 and <= 0xCF or >= StartOfScan and <= 0xDF => true,
        _ => false,
    };

    /// <summary>Without its thumbnail (JFIF 1.02), which may show what was cut off the picture.</summary>
    private static byte[] Head(ReadOnlySpan<byte> segment) => [0, JfifLength, .. segment[2..(JfifLength - 2)], 0, 0];

    internal static byte Marker(ReadOnlySpan<byte> bytes, ref int place)
    {
        if (place >= bytes.Length || bytes[place] != 0xFF)
            throw place >= bytes.Length ? PictureBrokenException.AtEnd : new PictureBrokenException("it is damaged between its segments");
        while (place < bytes.Length && bytes[place] == 0xFF)
            place++;
        return place < bytes.Length ? bytes[place++] : throw PictureBrokenException.AtEnd;
    }

    /// <summary>The length of a segment with its two bytes of length.</summary>
    internal static int Length(ReadOnlySpan<byte> bytes, int place)
    {
        if (place + 2 > bytes.Length)
            throw PictureBrokenException.AtEnd;
        var length = BinaryPrimitives.ReadUInt16BigEndian(bytes[place..]);
        if (length < 2 || place + length > bytes.Length)
            throw PictureBrokenException.AtEnd;
        return length;
    }

    internal static bool IsAlone(byte marker) => marker is 0x01 or (>= 0xD0 and <= 0xD7);

    /// <summary>The coded picture up to the next marker that is no restart.</summary>
    private static int CopyScan(ReadOnlySpan<byte> bytes, int start, MemoryStream kept)
    {
        var place = start;
        while (place + 1 < bytes.Length && (bytes[place] != 0xFF || bytes[place + 1] is 0x00 or 0xFF or (>= 0xD0 and <= 0xD7)))
            place++;
        if (place + 1 >= bytes.Length)
            throw PictureBrokenException.AtEnd;
        kept.Write(bytes[start..place]);
        return place;
    }
}
