using System.Buffers.Binary;
using CsCheck;
using MetadataExtractor;
using MetadataExtractor.Formats.Exif;
using Refettle.Imaging;

namespace Refettle.Tests.Imaging;

/// <summary>On files that Pillow and ExifTool wrote (make-pictures.py), read back by
/// MetadataExtractor, a reader that is not ours.</summary>
public sealed class PictureFileTests
{
    public static TheoryData<string> Files => new("phone.jpg", "progressive.jpg", "plain.jpg", "phone.png", "phone.webp");

    [Theory]
    [MemberData(nameof(Files))]
    public void Nothing_tells_the_place_the_camera_or_the_person_any_more(string name)
    {
        var before = Words(Read(name));
        var plain = PictureFile.Plain(Read(name)).Value;
        Assert.Equal(name != "plain.jpg",
            before.Contains("Somebody", StringComparison.Ordinal) && before.Contains("GPS", StringComparison.Ordinal));
        var after = Words(plain);
        Assert.All(new[] { "Somebody", "Phone", "123", "Somewhere", "GPS", "home" },
            word => Assert.DoesNotContain(word, after, StringComparison.Ordinal));
        Assert.All(new[] { "Somebody", "Somewhere", "a film" },
            word => Assert.DoesNotContain(word, System.Text.Encoding.Latin1.GetString(plain), StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void The_picture_itself_is_as_it_was(string name)
    {
        var (before, after) = (Sizes(Read(name)), Sizes(PictureFile.Plain(Read(name)).Value));
        Assert.NotEmpty(before);
        Assert.Equal(before, after);
    }

    /// <summary>ITU-T T.81, table B.1: the codes that are reserved, or for application data and comments. Of E0, E2 and EE what is
    /// well known stays, and this is not.</summary>
    [Fact]
    public void A_segment_that_shows_no_picture_goes_whatever_its_code()
    {
        var picture = Read("plain.jpg");
        var hidden = "Somewhere 52.5 N"u8;
        foreach (var code in Enumerable.Range(0x02, 0xBE).Append(0xC8).Concat(Enumerable.Range(0xE0, 0x1F)))
        {
            byte[] carrying = [.. picture[..2], 0xFF, (byte)code, 0, (byte)(hidden.Length + 2), .. hidden, .. picture[2..]];
            Assert.True(PictureFile.Plain(carrying).Value.AsSpan().IndexOf(hidden) < 0, $"{code:X2}");
        }
    }

    /// <summary>JFIF 1.02: behind the two bytes of its size a thumbnail, which may show what was cut off
    /// the picture, or anything else.</summary>
    [Fact]
    public void A_thumbnail_in_the_head_goes_and_the_head_stays()
    {
        var picture = PictureFile.Plain(Read("plain.jpg")).Value;
        var head = picture.AsSpan().IndexOf("JFIF"u8) - 4;
        var hidden = "cut it off  "u8;
        byte[] carrying =
            [.. picture[..(head + 2)], 0, 28, .. picture[(head + 4)..(head + 16)], 2, 2, .. hidden, .. picture[(head + 18)..]];
        Assert.Equal(picture, PictureFile.Plain(carrying).Value);
    }

    [Fact]
    public void A_chunk_that_says_it_is_longer_than_any_file_is_refused_in_words()
    {
        byte[] picture = [.. "RIFF"u8, 30, 0, 0, 0, .. "WEBPVP8X"u8, 0xFF, 0xFF, 0xFF, 0xFF, .. new byte[18]];
        Assert.Contains("breaks off", Assert.Single(PictureFile.Plain(picture).Faults).Found, StringComparison.Ordinal);
    }

    [Fact]
    public void Which_way_is_up_and_when_it_was_taken_stay()
    {
        var exif = ImageMetadataReader.ReadMetadata(new MemoryStream(PictureFile.Plain(Read("phone.jpg")).Value));
        Assert.Equal(6, exif.OfType<ExifIfd0Directory>().Single().GetInt32(ExifDirectoryBase.TagOrientation));
        Assert.Equal("2026:11:25 18:40:02", exif.OfType<ExifSubIfdDirectory>().Single().GetString(ExifDirectoryBase.TagDateTimeOriginal));
    }

    /// <summary>An eXIf chunk holds the data of TIFF 6.0 itself (PNG, third edition, 11.3.3.4). The CRC is that of Python's zlib.</summary>
    [Fact]
    public void Which_way_is_up_stays_in_a_PNG()
    {
        var picture = Read("phone.png");
        byte[] turned = [.. picture[..33], 0, 0, 0, (byte)Turned.Length, .. "eXIf"u8, .. Turned, 0, 0, 0, 0, .. picture[33..]];
        var plain = OnlyTurned(turned);
        Assert.True(plain.AsSpan().IndexOf((byte[])[0, 0, 0, 26, .. "eXIf"u8, .. OnlyOrientation, 0xD6, 0x67, 0x4B, 0x69]) > 0);
    }

    /// <summary>EXIF holds the same, and the bit 8 of VP8X announces it: RFC 9649, 2.7.</summary>
    [Fact]
    public void Which_way_is_up_stays_in_a_WebP()
    {
        var picture = Read("phone.webp");
        byte[] turned = [.. picture[..30], .. "EXIF"u8, (byte)Turned.Length, 0, 0, 0, .. Turned, .. picture[30..]];
        BinaryPrimitives.WriteInt32LittleEndian(turned.AsSpan(4), turned.Length - 8);
        var plain = OnlyTurned(turned);
        Assert.Equal(8, plain[20] & 0x0C);
        Assert.True(plain.AsSpan().IndexOf((byte[])[.. "EXIF"u8, 26, 0, 0, 0, .. OnlyOrientation]) > 0);
        Assert.Equal(plain.Length - 8, BinaryPrimitives.ReadInt32LittleEndian(plain.AsSpan(4)));
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Doing_it_twice_changes_nothing_more(string name)
    {
        var plain = PictureFile.Plain(Read(name)).Value;
        Assert.Equal(plain, PictureFile.Plain(plain).Value);
    }

    [Theory]
    [InlineData("GIF89a")]
    [InlineData("")]
    [InlineData("<svg xmlns='http://www.w3.org/2000/svg'/>")]
    public void What_is_no_photo_is_refused(string text) =>
        Assert.Contains("no JPEG, PNG or WebP", Assert.Single(PictureFile.Plain(System.Text.Encoding.ASCII.GetBytes(text)).Faults).Found,
            StringComparison.Ordinal);

    [Theory]
    [MemberData(nameof(Files))]
    public void A_file_that_breaks_off_anywhere_is_refused_in_words(string name)
    {
        var whole = Read(name);
        var end = whole.AsSpan().IndexOf("a film"u8) is var film and > 0 ? film : whole.Length;
        for (var length = 0; length < end; length += 3)
            Assert.False(PictureFile.Plain(whole[..length]).IsGood, $"{length} of {end} bytes");
    }

    [Fact]
    public void Damaged_files_never_end_the_program() =>
        Gen.Select(Gen.Int[0, 4], Gen.Int[0, 5000], Gen.Byte, Gen.Int[0, 5000], Gen.Byte).Sample((file, place, value, other, then) =>
    {
        var bytes = Read(((IEnumerable<object[]>)Files).ElementAt(file)[0].ToString()!);
        bytes[place % bytes.Length] = value;
        bytes[other % bytes.Length] = then;
        var plain = PictureFile.Plain(bytes);
        return plain.IsGood
            ? PictureFile.Plain(plain.Value) is { IsGood: true } again && again.Value.AsSpan().SequenceEqual(plain.Value)
            : plain.Faults.Count == 1;
    }, iter: 2000);

    /// <summary>TIFF 6.0: lying on its side (6), by somebody.</summary>
    private static readonly byte[] Turned =
    [
        .. "II*\0"u8, 8, 0, 0, 0, 2, 0, 0x12, 1, 3, 0, 1, 0, 0, 0, 6, 0, 0, 0, 0x3B, 1, 2, 0, 9, 0, 0, 0, 38, 0, 0, 0, 0, 0, 0, 0,
        .. "Somebody\0\0"u8,
    ];

    private static readonly byte[] OnlyOrientation = [.. "MM\0*"u8, 0, 0, 0, 8, 0, 1, 1, 0x12, 0, 3, 0, 0, 0, 1, 0, 6, 0, 0, 0, 0, 0, 0];

    private static byte[] OnlyTurned(byte[] turned)
    {
        var plain = PictureFile.Plain(turned).Value;
        var exif = ImageMetadataReader.ReadMetadata(new MemoryStream(plain)).OfType<ExifIfd0Directory>().Single();
        Assert.Equal(6, exif.GetInt32(ExifDirectoryBase.TagOrientation));
        Assert.DoesNotContain("Somebody", System.Text.Encoding.Latin1.GetString(plain), StringComparison.Ordinal);
        Assert.Equal(plain, PictureFile.Plain(plain).Value);
        return plain;
    }

    private static byte[] Read(string name) => File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "Imaging", "Files", name));

    private static string Words(byte[] bytes) => string.Join('\n', ImageMetadataReader.ReadMetadata(new MemoryStream(bytes))
        .Where(directory => directory.Name is not ("File" or "File Type")).SelectMany(directory => directory.Tags)
        .Select(tag => $"{tag.DirectoryName} {tag.Name} {tag.Description}"));

    private static List<string> Sizes(byte[] bytes) => [.. ImageMetadataReader.ReadMetadata(new MemoryStream(bytes))
        .Where(directory => directory.Name is "JPEG" or "PNG-IHDR" or "WebP").SelectMany(directory => directory.Tags)
        .Where(tag => tag.Name.Contains("Width", StringComparison.Ordinal) || tag.Name.Contains("Height", StringComparison.Ordinal))
        .Select(tag => tag.ToString())];
}
