using System.Text;
using System.Text.Json.Nodes;
using Refettle.SaleFile.Sealing;
using Refettle.Tests.Logbook;

namespace Refettle.Tests.SaleFile;

/// <summary>Every single change of one entry in a record of 1,000 is found, and the entry is named.</summary>
public sealed class TamperTests
{
    private static readonly string[] Lines = Encoding.UTF8.GetString(ThousandEntries.File).Split('\n');

    [Fact]
    public void A_file_that_nobody_touched_is_untouched()
    {
        var answer = Verify(Lines);
        Assert.Equal(SealStanding.Untouched, answer.Standing);
        Assert.Equal((ThousandEntries.Count, TestDevice.Car), (answer.Entries, answer.Header.Car));
        Assert.Empty(answer.Findings);
        Assert.Empty(answer.Chains);
    }

    private static readonly string[] Changes =
        ["id", "device", "sequence", "after", "previous", "at", "kind", "version", "payload", "salt", "field name", "field text",
            "field blinding", "commitment"];

    [Fact]
    public void A_change_of_any_entry_is_found()
    {
        for (var i = 1; i <= ThousandEntries.Count; i++)
            Assert.True(IsFound(i, Changes[i % 10]) || IsFound(i, "kind"));
    }

    [Fact]
    public void Any_change_of_an_entry_is_found()
    {
        foreach (var what in Changes)
            Assert.True(Enumerable.Range(1, 40).Count(i => IsFound(i, what)) >= 3, what);
    }

    [Fact]
    public void A_removed_entry_is_named_whichever_it_is()
    {
        for (var i = 1; i <= ThousandEntries.Count; i++)
        {
            var entry = JsonNode.Parse(Lines[i])!;
            var finding = Assert.Single(Verify(Lines.Where((_, at) => at != i)).Findings);
            Assert.Equal((EntryChange.Removed, (string)entry["device"]!, (long)entry["sequence"]!),
                (finding.Change, finding.Device, finding.Sequence));
        }
    }

    [Fact]
    public void An_added_entry_is_named_wherever_it_stands()
    {
        for (var i = 1; i <= ThousandEntries.Count; i += 25)
        {
            var entry = JsonNode.Parse(Lines[i])!;
            entry["sequence"] = 5_000;
            var finding = Assert.Single(Verify(Lines[..i].Append(entry.ToJsonString(RecordLines.Json)).Concat(Lines[i..])).Findings);
            Assert.Equal((EntryChange.Added, 5_000, i + 1), (finding.Change, finding.Sequence, finding.Line));
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(ThousandEntries.Count + 1)]
    public void A_change_of_header_or_list_breaks_the_seal(int line) =>
        Assert.Equal(SealStanding.SealBroken, Verify(Replaced(line, Lines[line].Replace('0', '1'))).Standing);

    [Fact]
    public void Entries_in_another_order_are_the_same_entries_in_a_changed_file()
    {
        string[] swapped = [Lines[0], Lines[2], Lines[1], .. Lines[3..]];
        Assert.Equal(SealStanding.WordsChanged, Verify(swapped).Standing);
    }

    [Fact]
    public void A_change_around_the_record_is_found()
    {
        var page = ThousandEntries.Closed($"<p>No rust was recorded.</p>\n{Encoding.UTF8.GetString(Unsealed())}</script>");
        Assert.Equal(SealStanding.Untouched, Verifier.Of(page, ThousandEntries.Key).Value.Standing);
        var forged = Encoding.UTF8
            .GetBytes(Encoding.UTF8.GetString(page).Replace("No rust was recorded", "It is rust-free now", StringComparison.Ordinal));
        Assert.Equal(SealStanding.WordsChanged, Verifier.Of(forged, ThousandEntries.Key).Value.Standing);
    }

    [Fact]
    public void Who_signs_anew_with_another_key_shows_another_fingerprint()
    {
        var forger = new TestSeal();
        Assert.NotEqual(Verification.FingerprintOf(forger.PublicKey), Verify(Lines).Fingerprint);
        var signature = Lines[^2].Replace(ThousandEntries.Key.PublicKey, forger.PublicKey, StringComparison.Ordinal);
        Assert.Equal(SealStanding.SealBroken, Verify(Replaced(Lines.Length - 2, signature)).Standing);
    }

    [Fact]
    public void What_was_broken_before_it_was_signed_is_told_too()
    {
        var entries = ThousandEntries.Entries.ToArray();
        entries[10] = entries[10] with { Payload = """{"text":"forged before"}""" };
        var answer = Verifier.Of(ThousandEntries.Sealed(entries), ThousandEntries.Key).Value;
        Assert.Equal(SealStanding.Untouched, answer.Standing);
        Assert.Contains($"entry {entries[10].Sequence + 1} was not written after", Assert.Single(answer.Chains), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("<html>nothing here</html>")]
    [InlineData("{\"saleFile\":{\"form\":\"")]
    [InlineData("{\"saleFile\":{\"form\":\"x\"}}\n{\"signature\":{\"algorithm\":\"")]
    public void A_file_without_a_record_is_refused_with_a_reason(string text) =>
        Assert.NotEmpty(Assert.Single(Verifier.Of(Encoding.UTF8.GetBytes(text), ThousandEntries.Key).Faults).Mend);

    /// <summary>Makes the change and looks for it; false when the entry has nothing of that kind.</summary>
    private static bool IsFound(int line, string what)
    {
        var entry = JsonNode.Parse(Lines[line])!.AsObject();
        var (device, sequence) = ((string)entry["device"]!, (long)entry["sequence"]!);
        if (!Change(entry, what))
            return false;
        var answer = Verify(Replaced(line, entry.ToJsonString(RecordLines.Json)));
        Assert.Equal(SealStanding.EntriesChanged, answer.Standing);
        Assert.Contains(answer.Findings,
            finding => (finding.Device, finding.Sequence) == (device, sequence)
                && finding.Change is EntryChange.Changed or EntryChange.Removed);
        Assert.InRange(answer.Findings.Count, 1, 2);
        return true;
    }

    private static bool Change(JsonObject entry, string what)
    {
        var key = what.Contains(' ', StringComparison.Ordinal) ? what[(what.IndexOf(' ', StringComparison.Ordinal) + 1)..] : what;
        var place = what.StartsWith("field", StringComparison.Ordinal) || what == "commitment"
            ? entry["fields"]?.AsArray().FirstOrDefault(field => field![key] is not null)?.AsObject()
            : entry;
        if (place?[key] is not { } old)
            return false;
        place[key] = old switch
        {
            JsonArray { Count: 0 } => new JsonArray("0195f000-1234-7abc-8def-0123456789ac"),
            JsonArray => new JsonArray(),
            _ when key == "at" => DateTimeOffset.Parse((string)old!, null).AddMilliseconds(1).ToString("O"),
            _ when key is "sequence" or "version" => (long)old + 7_000,
            _ when key == "previous" && (string)old! == "" => "00",
            _ => Different((string)old!),
        };
        return true;
    }

    /// <summary>One letter in the middle is another.</summary>
    private static string Different(string text)
    {
        var at = Math.Min(text.Length - 1, (text.Length / 2) + 1);
        return text[..at] + (text[at] == '1' ? '2' : '1') + text[(at + 1)..];
    }

    private static byte[] Unsealed()
    {
        var text = Encoding.UTF8.GetString(ThousandEntries.File);
        var place = text.LastIndexOf(RecordLines.BeforeFile, StringComparison.Ordinal) + RecordLines.BeforeFile.Length;
        return Encoding.UTF8.GetBytes(text[..place] + RecordLines.Open + text[(place + RecordLines.SignatureDigits)..]);
    }

    private static IEnumerable<string> Replaced(int line, string with) => Lines.Select((old, i) => i == line ? with : old);

    private static Verification Verify(IEnumerable<string> lines) =>
        Verifier.Of(Encoding.UTF8.GetBytes(string.Join('\n', lines)), ThousandEntries.Key).Value;
}
