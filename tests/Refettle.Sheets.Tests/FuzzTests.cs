using System.Text;
using CsCheck;

namespace Refettle.Sheets.Tests;

/// <summary>Sheets with pieces cut out, doubled, swapped or changed: read or refused, never a crash.</summary>
public sealed class FuzzTests
{
    private static readonly string[] Bits =
        ["{", "}", "[", "]", ":", ": ", "- ", "\n", "  ", "\t", "\"", "'", "&a ", "*a", "!x ", "|", ">", "#", "%", "@", "?", "---\n",
            "null", "-1 min", "1e9", "\0", "\uFEFF", "{p}", "off(", "é", "\ud800"];

    private static readonly Gen<(int, int, int)> Change = Gen.Select(Gen.Int[0, 100_000], Gen.Int[0, 40], Gen.Int[0, Bits.Length + 10]);

    [Fact]
    public void A_changed_sheet_is_read_or_refused() => Gen.Select(AnySheet.Gen1, Change.Array[1, 6]).Sample((sheet, changes) =>
    {
        var text = changes.Aggregate(SheetWriter.Write(sheet), Changed);
        var result = SheetReader.Read(text, "x");
        Assert.True(result.IsGood || result.Faults.Count > 0);
        Assert.All(result.Faults, fault => Assert.True(fault.Found.Length > 0 && fault.Mend.Length > 0));
    }, iter: 1_000);

    [Fact]
    public void A_changed_kit_is_read_or_refused()
    {
        var texts = Directory.GetFiles(Checkout.Kits, "*.yaml").Order(StringComparer.Ordinal).Select(File.ReadAllText)
            .OrderBy(text => text.Length).Take(8).ToArray();
        Gen.Select(Gen.Int[0, texts.Length - 1].Select(i => texts[i]), Change.Array[1, 6]).Sample((kit, changes) =>
        {
            var result = KitReader.Read(changes.Aggregate(kit, Changed), "x", Checkout.Shelf.Start);
            Assert.True(result.IsGood || result.Faults.Count > 0);
        }, iter: 100);
    }

    [Fact]
    public void Any_bytes_are_read_or_refused() =>
        Gen.Byte.Array[0, 200].Sample(bytes => Assert.NotEmpty(SheetReader.Read(bytes, "x").Faults), iter: 1_000);

    private static string Changed(string text, (int At, int Length, int Kind) change)
    {
        var at = change.At % (text.Length + 1);
        var length = Math.Min(change.Length, text.Length - at);
        var changed = new StringBuilder(text);
        if (change.Kind < Bits.Length)
            return changed.Insert(at, Bits[change.Kind]).ToString();
        if (change.Kind % 3 == 0)
            return changed.Remove(at, length).ToString();
        return changed.Insert(change.At * 7 % (text.Length + 1), text.AsSpan(at, length)).ToString();
    }
}
