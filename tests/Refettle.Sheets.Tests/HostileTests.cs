using System.Text;

namespace Refettle.Sheets.Tests;

/// <summary>Files that were made to hurt, or are no sheets at all: refused with one message.</summary>
public sealed class HostileTests
{
    public static TheoryData<string, string> Texts => new()
    {
        { "", "the file is empty" },
        { "# nothing\n", "the file is empty" },
        { "just words", "the file is not a set of keys" },
        { "- a\n- b", "the file is not a set of keys" },
        { "refettle: 1\na: &x [1, 2]\nb: *x", "anchors (&) and aliases (*) are not read" },
        { Bomb(), "anchors (&) and aliases (*) are not read" },
        { "refettle: !!python/object:os.system x", "tags (!) are not read" },
        { "a: " + new string('[', 100_000), "values are nested more than 12 deep" },
        { "a: " + string.Concat(Enumerable.Repeat("{a: ", 100_000)), "values are nested more than 12 deep" },
        { string.Concat(Enumerable.Range(0, 2_000).Select(i => new string(' ', i) + "a:\n")), "values are nested more than 12 deep" },
        { string.Concat(Enumerable.Repeat("- ", 100_000)) + "x", "values are nested more than 12 deep" },
        { "a: " + new string('x', 1_000_000), "a text has 1,000,000 characters" },
        { "a: \"" + new string('x', 1_000_000) + "\"", "a text has 1,000,000 characters" },
        { "a: 1\0\nb: 2", "there is a control character (U+0000)" },
        { "a: \u0007", "there is a control character (U+0007)" },
        { "a: 1\n---\nb: 2", "a second document begins here" },
        { new string('a', 33 * 1024 * 1024), "the file has 33 MB" },
    };

    [Theory]
    [MemberData(nameof(Texts), DisableDiscoveryEnumeration = true)]
    public void Is_refused_with_one_message(string text, string found)
    {
        var fault = Assert.Single(SheetReader.Read(text, "x.yaml").Faults);
        Assert.Equal(found, fault.Found);
        Assert.True(fault.Line > 0 && fault.Column > 0);
    }

    [Theory]
    [InlineData("a: [1, 2")]
    [InlineData("a: \"open")]
    [InlineData("a: b: c")]
    [InlineData("a: {b: 1}}")]
    [InlineData("%YAML 9.9\n---\na: 1")]
    [InlineData("a: 1\n  b: 2")]
    [InlineData("a: @x")]
    public void Broken_yaml_is_one_message_with_its_line(string text)
    {
        var fault = Assert.Single(SheetReader.Read(text, "x.yaml").Faults);
        Assert.StartsWith("this is not YAML: ", fault.Found, StringComparison.Ordinal);
        Assert.True(fault.Line > 0);
    }

    public static TheoryData<byte[], string> Encodings => new()
    {
        { Encoding.Unicode.GetPreamble().Concat(Encoding.Unicode.GetBytes("refettle: 1")).ToArray(), "the file is in UTF-16 or UTF-32" },
        { Encoding.Unicode.GetBytes("refettle: 1"), "the file is in UTF-16 or UTF-32" },
        { Encoding.BigEndianUnicode.GetBytes("refettle: 1"), "the file is in UTF-16 or UTF-32" },
        { Encoding.UTF32.GetBytes("refettle: 1"), "the file is in UTF-16 or UTF-32" },
        { Encoding.Latin1.GetBytes("refettle: 1\ncar: { name: Kühler }"), "the file is not in UTF-8 (an old 8-bit encoding?)" },
        { [0x1F, 0x8B, 0x08, 0x00], "the file is not in UTF-8 (an old 8-bit encoding?)" },
        { new byte[40 * 1024 * 1024], "the file has 40 MB" },
    };

    [Theory]
    [MemberData(nameof(Encodings), DisableDiscoveryEnumeration = true)]
    public void Another_encoding_is_one_message(byte[] bytes, string found) =>
        Assert.Equal(found, Assert.Single(SheetReader.Read(bytes, "x.yaml").Faults).Found);

    [Fact]
    public void The_line_of_a_wrong_byte_is_named()
    {
        var fault = SheetReader.Read(Encoding.Latin1.GetBytes("refettle: 1\ncar: { name: Kühler }"), "x.yaml").Faults.Single();
        Assert.Equal((2, 15), (fault.Line, fault.Column));
    }

    [Fact]
    public void Very_many_faults_are_counted_after_the_first_thousand()
    {
        var text = "refettle: 1\ncar: { name: x }\nparts:\n"
            + string.Concat(Enumerable.Range(0, 5_000).Select(i => $"  p{i}: {{ zone: nowhere{i} }}\n"));
        var faults = SheetReader.Read(text, "x").Faults;
        Assert.Equal(1_001, faults.Count);
        Assert.Equal("there are 4,000 more faults", faults[^1].Found);
    }

    /// <summary>The well-known "billion laughs": nine levels of nine aliases.</summary>
    private static string Bomb() => "l0: &l0 [lol]\n" + string.Concat(Enumerable.Range(1, 9).Select(i =>
        $"l{i}: &l{i} [{string.Join(", ", Enumerable.Repeat($"*l{i - 1}", 9))}]\n"));
}
