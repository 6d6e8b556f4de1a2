using System.Buffers.Binary;
using System.Text;

namespace Refettle.Imaging;

/// <summary>What of a photo's Exif data (CIPA DC-008, TIFF 6.0) may stay: which way is up, and when it
/// was taken by the camera's clock.</summary>
/// <param name="Orientation">1 to 8; 1 is upright.</param>
/// <param name="Taken"><c>2026:11:25 18:40:02</c>; null when not said.</param>
internal readonly record struct ExifFacts(int Orientation, string? Taken)
{
    private const ushort OrientationTag = 0x0112;
    private const ushort ExifTag = 0x8769;
    private const ushort TakenTag = 0x9003;
    private const int TakenLength = 20;

    public bool IsEmpty => Orientation is < 2 or > 8 && Taken is null;

    public static ExifFacts OfJpeg(ReadOnlySpan<byte> bytes)
    {
        for (var place = 2; ;)
        {
            var marker = JpegPlain.Marker(bytes, ref place);
            if (marker is 0xDA or 0xD9)
                return default;
            var length = JpegPlain.IsAlone(marker) ? 0 : JpegPlain.Length(bytes, place);
            if (marker == 0xE1 && bytes.Slice(place + 2, length - 2).StartsWith("Exif\0\0"u8))
                return OfTiff(bytes.Slice(place + 8, length - 8));
            place += length;
        }
    }

    /// <summary>Of the data itself, as a PNG or WebP chunk holds it; some writers put JPEG's mark before it.</summary>
    public static ExifFacts OfChunk(ReadOnlySpan<byte> data) => OfTiff(data.StartsWith("Exif\0\0"u8) ? data[6..] : data);

    /// <summary>A whole APP1 segment with its marker.</summary>
    public byte[] Segment()
    {
        var tiff = Tiff();
        var segment = new byte[10 + tiff.Length];
        segment[0] = 0xFF;
        segment[1] = 0xE1;
        BinaryPrimitives.WriteUInt16BigEndian(segment.AsSpan(2), (ushort)(8 + tiff.Length));
        "Exif\0\0"u8.CopyTo(segment.AsSpan(4));
        tiff.CopyTo(segment, 10);
        return segment;
    }

    /// <summary>The data itself.</summary>
    public byte[] Tiff()
    {
        var tiff = new byte[Taken is null ? 26 : 26 + 12 + 18 + TakenLength];
        "MM\0*"u8.CopyTo(tiff);
        BinaryPrimitives.WriteUInt32BigEndian(tiff.AsSpan(4), 8);
        BinaryPrimitives.WriteUInt16BigEndian(tiff.AsSpan(8), (ushort)(Taken is null ? 1 : 2));
        Write(tiff.AsSpan(10), OrientationTag, 3, 1, (uint)Math.Clamp(Orientation, 1, 8) << 16);
        if (Taken is { } taken)
        {
            Write(tiff.AsSpan(22), ExifTag, 4, 1, 38);
            BinaryPrimitives.WriteUInt16BigEndian(tiff.AsSpan(38), 1);
            Write(tiff.AsSpan(40), TakenTag, 2, TakenLength, 56);
            Encoding.ASCII.GetBytes(taken, tiff.AsSpan(56));
        }

        return tiff;
    }

    /// <summary>Damaged data says nothing; it is no reason to refuse a photo.</summary>
    private static ExifFacts OfTiff(ReadOnlySpan<byte> tiff)
    {
        if (tiff.Length < 8 || !(tiff.StartsWith("II*\0"u8) || tiff.StartsWith("MM\0*"u8)))
            return default;
        var isLittle = tiff[0] == (byte)'I';
        var first = Directory(tiff, (long)Number(tiff[4..], 4, isLittle), isLittle);
        var orientation = (int)(first.GetValueOrDefault(OrientationTag) is { Size: 2 } upright ? upright.Value : 0);
        var inner = first.TryGetValue(ExifTag, out var pointer) ? Directory(tiff, pointer.Value, isLittle) : [];
        return new(orientation is >= 2 and <= 8 ? orientation : 0,
            inner.TryGetValue(TakenTag, out var taken) ? Moment(tiff, taken.Value) : null);
    }

    private static Dictionary<ushort, (int Size, long Value)> Directory(ReadOnlySpan<byte> tiff, long start, bool isLittle)
    {
        var entries = new Dictionary<ushort, (int, long)>();
        if (start < 8 || start + 2 > tiff.Length)
            return entries;
        var count = (int)Number(tiff[(int)start..], 2, isLittle);
        for (var i = 0; i < count && start + 2 + (12L * (i + 1)) <= tiff.Length; i++)
        {
            var entry = tiff.Slice((int)start + 2 + (12 * i), 12);
            var size = Number(entry[2..], 2, isLittle) == 3 ? 2 : 4;
            entries.TryAdd((ushort)Number(entry, 2, isLittle), (size, (long)Number(entry[8..], size, isLittle)));
        }

        return entries;
    }

    private static string? Moment(ReadOnlySpan<byte> tiff, long start)
    {
        if (start < 8 || start + TakenLength > tiff.Length)
            return null;
        var text = Encoding.ASCII.GetString(tiff.Slice((int)start, TakenLength - 1));
        return text.All(c => char.IsAsciiDigit(c) || c is ':' or ' ') ? text : null;
    }

    private static ulong Number(ReadOnlySpan<byte> bytes, int size, bool isLittle) => (size, isLittle) switch
    {
        (2, true) => BinaryPrimitives.ReadUInt16LittleEndian(bytes),
        (2, false) => BinaryPrimitives.ReadUInt16BigEndian(bytes),
        (_, true) => BinaryPrimitives.ReadUInt32LittleEndian(bytes),
        _ => BinaryPrimitives.ReadUInt32BigEndian(bytes),
    };

    private static void Write(Span<byte> entry, ushort tag, ushort type, uint count, uint value)
    {
        BinaryPrimitives.WriteUInt16BigEndian(entry, tag);
        BinaryPrimitives.WriteUInt16BigEndian(entry[2..], type);
        BinaryPrimitives.WriteUInt32BigEndian(entry[4..], count);
        BinaryPrimitives.WriteUInt32BigEndian(entry[8..], value);
    }
}
