using Refettle.Logbook;

namespace Refettle.Tests.Logbook;

/// <summary>The expected hashes were computed by docs/verify-entry.py with Python 3.11's hashlib, hmac and json.</summary>
public sealed class EntryHashTests
{
    private const string Payload =
        """{ "took" : 1.50, "text":"Bolt \u00bd\" – “moved” 🔧", "about" : null ,"Ärger":[1e3,{"b":2,"a":1}] }""";

    private static readonly Entry Entry = new()
    {
        Id = Guid.Parse("0195f000-1234-7abc-8def-0123456789ab"),
        Car = "heron",
        Device = "phone",
        Sequence = 7,
        After = [Guid.Parse("0195f000-ffff-7abc-8def-0123456789ab"), Guid.Parse("0195f000-0000-7abc-8def-0123456789ab")],
        Salt = "000102030405060708090a0b0c0d0e0f101112131415161718191a1b1c1d1e1f",
        Previous = "ffeeddccbbaa99887766554433221100ffeeddccbbaa99887766554433221100",
        At = new(2026, 3, 1, 9, 0, 0, 123, TimeSpan.Zero),
        Kind = "noted",
        Version = 1,
        Payload = Payload,
    };

    [Fact]
    public void The_hash_is_the_one_computed_elsewhere() =>
        Assert.Equal("e94632b6ebefd63d2f4b0865790d090a20d0e70326d118ff942af54cd13523b5", EntryHash.Of(Entry));

    [Fact]
    public void A_first_entry_without_fields_before_1970_hashes_as_elsewhere() =>
        Assert.Equal("37a4da3ecaabce04549b73c5f54ed67081b8c212c4df1039570e77f97acc8e2f", EntryHash.Of(Entry with
        {
            Id = Guid.Parse("0195f000-1234-7abc-8def-0123456789ac"),
            Sequence = 1,
            After = [],
            Previous = "",
            At = new(1969, 12, 31, 23, 59, 59, 999, TimeSpan.Zero),
            Kind = "struck",
            Payload = "{}",
        }));

    /// <summary>U+FFFD sorts before U+1F527 by UTF-8 bytes but after it by UTF-16 units.</summary>
    [Fact]
    public void Fields_are_sorted_by_bytes() => Assert.Equal(
        ["\uFFFD", "🔧"],
        PayloadField.Of(Entry with { Payload = "{\"🔧\":1,\"\uFFFD\":2}" }).Select(field => field.Name));

    [Fact]
    public void Order_of_fields_and_references_offset_and_blanks_do_not_matter()
    {
        var same = Entry with
        {
            After = [.. Entry.After.Reverse()],
            At = Entry.At.ToOffset(TimeSpan.FromHours(-7)),
            Payload = """{"Ärger":[1e3,{"b":2,"a":1}],"about":null,"text":"Bolt \u00bd\" – “moved” 🔧","took":1.50}""",
        };
        Assert.Equal(EntryHash.Of(Entry), EntryHash.Of(same));
    }

    public static TheoryData<string> Changes => new(
        "id", "car", "device", "sequence", "after", "salt", "previous", "at", "kind", "version", "number", "name", "added", "removed",
        "shifted");

    [Theory]
    [MemberData(nameof(Changes))]
    public void Any_change_changes_the_hash(string what)
    {
        var changed = what switch
        {
            "id" => Entry with { Id = Guid.Parse("0195f000-1234-7abc-8def-0123456789ac") },
            "car" => Entry with { Car = "saloon" },
            "device" => Entry with { Device = "tablet" },
            "sequence" => Entry with { Sequence = 8 },
            "after" => Entry with { After = [Entry.After[0]] },
            "salt" => Entry with { Salt = "1" + Entry.Salt[1..] },
            "previous" => Entry with { Previous = "0" + Entry.Previous[1..] },
            "at" => Entry with { At = Entry.At.AddMilliseconds(1) },
            "kind" => Entry with { Kind = "struck" },
            "version" => Entry with { Version = 2 },
            "number" => Entry with { Payload = Payload.Replace("1.50", "1.51", StringComparison.Ordinal) },
            "name" => Entry with { Payload = Payload.Replace("took", "tool", StringComparison.Ordinal) },
            "added" => Entry with { Payload = Payload.Replace("{ ", "{ \"x\":1,", StringComparison.Ordinal) },
            "removed" => Entry with { Payload = Payload.Replace(" \"took\" : 1.50,", "", StringComparison.Ordinal) },
            _ => Entry with { Kind = "note", Device = "dphone" },
        };
        Assert.NotEqual(Entry, changed);
        Assert.NotEqual(EntryHash.Of(Entry), EntryHash.Of(changed));
    }

    [Fact]
    public void A_field_can_be_blacked_out_and_the_hash_stays()
    {
        var given = PayloadField.Of(Entry).Select(field => field.Name == "text" ? field.BlackedOut() : field).ToValueList();
        Assert.Equal(EntryHash.Of(Entry), EntryHash.Of(Entry with { Salt = "", Payload = "" }, given));
        Assert.All(given, field => Assert.True(field.IsTrue));
        Assert.DoesNotContain(given, field => field.Text?.Contains("moved", StringComparison.Ordinal) ?? false);
    }

    [Fact]
    public void A_field_that_is_given_away_changed_does_not_open_its_commitment()
    {
        var field = PayloadField.Of(Entry).Single(field => field.Name == "took");
        Assert.False((field with { Text = "1.51" }).IsTrue);
    }

    [Theory]
    [InlineData("""[1,2]""")]
    [InlineData("""{"a":""")]
    [InlineData("")]
    [InlineData("""{"a":1}{"b":2}""")]
    public void A_payload_that_is_no_object_is_hashed_whole(string payload)
    {
        var fields = PayloadField.Of(Entry with { Payload = payload });
        Assert.Equal(("", payload), (Assert.Single(fields).Name, fields[0].Text));
    }

    [Fact]
    public void Fields_of_one_name_are_all_hashed()
    {
        var twice = Entry with { Payload = """{"a":1,"a":2}""" };
        Assert.Equal(2, PayloadField.Of(twice).Count);
        Assert.NotEqual(EntryHash.Of(twice), EntryHash.Of(twice with { Payload = """{"a":1,"a":3}""" }));
    }
}
