using Refettle.Logbook;
using Refettle.SaleFile;
using Refettle.Tests.Logbook;

namespace Refettle.Tests.SaleFile;

public sealed class PrivacyTests
{
    private static readonly Privacy Everything = new(true, true, true, []);

    [Theory]
    [InlineData("paid 45 EUR for bushes")]
    [InlineData("45,50 € each")]
    [InlineData("$1200 asked")]
    [InlineData("about 300 pounds sterling")]
    public void Sums_of_money_are_seen(string text) => Assert.True(PrivateWords.LookLikeMoney(text));

    [Theory]
    [InlineData("call +44 1632 960123")]
    [InlineData("ask on 01632 960 123")]
    [InlineData("mail sam@example.org")]
    [InlineData("to 12 Long Mill Road")]
    [InlineData("Lindenstraße 4")]
    public void Addresses_and_numbers_are_seen(string text) => Assert.True(PrivateWords.LookLikePeople(text));

    [Theory]
    [InlineData("four washers 12 x 24 x 2.5, thick ones outside")]
    [InlineData("part number 1988-220-4471 A")]
    [InlineData("torqued to 110 N·m, 90 degrees")]
    [InlineData("12 mm drive socket")]
    public void What_a_mechanic_writes_is_left_alone(string text) =>
        Assert.False(PrivateWords.LookLikeMoney(text) || PrivateWords.LookLikePeople(text));

    [Fact]
    public void Prices_names_and_whole_entries_are_blacked_out_and_every_hash_stays()
    {
        var history = SmallCar.After(
            new SettingsChosen(new() { PerHour = new(42.5m) }),
            new JointTightened("tank-body", Tightness.Torqued, new(48), "wrench", "Sam"),
            new Noted("strap bent, paid 45 EUR", "part tank"), new Noted("secret", null),
            new StructureAdded("edit",
                SmallCar.Structure with { Parts = [.. SmallCar.Structure.Parts.Select(part => part with { Price = new(123.45m) })] }, []));
        var hidden = history.Lines.Single(line => line.Happening is Noted { Text: "secret" }).Entry.Id;
        var seen = SeenEntry.Of(history, Privacy.Standard with { Hidden = [hidden] });
        Assert.All(seen, entry => Assert.Equal(EntryHash.Of(entry.Entry), entry.Given.Hash()));
        var given = string.Join('\n', seen.Select(entry => Refettle.SaleFile.Sealing.RecordLines.Of(entry.Given)));
        Assert.All(new[] { "42.5", "Sam", "45 EUR", "secret", "123.45" },
            word => Assert.DoesNotContain(word, given, StringComparison.Ordinal));
        Assert.Contains("wrench", given, StringComparison.Ordinal);
        Assert.All(seen.Where(entry => entry.Given.Fields is not null), entry => Assert.Null(entry.Given.Salt));
        var open = SeenEntry.Of(history, Everything);
        Assert.All(open, entry => Assert.Null(entry.Given.Fields));
    }

    [Fact]
    public void Hours_are_left_out_when_asked()
    {
        var history = SmallCar.After(new StepDone(Fact.Open("tank-body"), "spanner", new(37)),
            new Tried(new("wheel-axle", "soak", null, true, new(41))));
        var seen = SeenEntry.Of(history, Privacy.Standard with { Hours = false });
        var given = string.Join('\n', seen.Select(entry => Refettle.SaleFile.Sealing.RecordLines.Of(entry.Given)));
        Assert.DoesNotContain("\"37\"", given, StringComparison.Ordinal);
        Assert.DoesNotContain("41",
            string.Concat(seen.Where(entry => entry.Entry.Kind == "tried").SelectMany(entry => entry.Given.Fields!)
                .Select(field => field.Text)), StringComparison.Ordinal);
        Assert.Equal(new StepDone(Fact.Open("tank-body"), "spanner", null), seen.Single(entry => entry.Entry.Kind == "step-done").Told);
    }

    [Theory]
    [InlineData("check.road-test", false)]
    [InlineData("order.tidewater", true)]
    public void Of_marks_only_checks_are_open(string task, bool isHidden)
    {
        var entry = new TestDevice("bench").Write(new TaskMarked(new(task, TaskProgress.Done, new(2027, 3, 1, 10, 0))));
        var field = System.Text.Json.JsonDocument.Parse(entry.Payload).RootElement.GetProperty("mark").GetRawText();
        Assert.Equal(isHidden, FieldPrivacy.IsHidden(Privacy.Standard, entry, "mark", field));
        Assert.False(FieldPrivacy.IsHidden(Everything, entry, "mark", field));
    }

    [Fact]
    public void What_nobody_has_thought_of_is_hidden()
    {
        var entry = new TestDevice("bench").Write(new Noted("x", null)) with { Kind = "tune-hummed", Payload = """{"who":"Sam"}""" };
        Assert.True(FieldPrivacy.IsHidden(Privacy.Standard, entry, "who", "\"Sam\""));
        Assert.False(FieldPrivacy.IsHidden(Everything, entry, "who", "\"Sam\""));
    }
}
