using Refettle.Logbook;
using Refettle.SaleFile;
using Refettle.Tests.Logbook;

namespace Refettle.Tests.SaleFile;

/// <summary>What a buyer reads of parts, of work by others, of alignment and of torques that contradict each
/// other. What such a record has to say is common practice, no source; the angles' signs are those of ISO 8855:2011.</summary>
public sealed class RecordTests
{
    private static readonly Happening[] _offAndOn = [new StepDone(Fact.Off("tank"), null, null), new StepReversed(Fact.Off("tank"), null)];

    private static readonly PiecesMoved _fitted = new(new("44-1"), 1, StockPlace.Shelf, StockPlace.On("heron", "part tank"), null, null);

    [Theory]
    [InlineData(VerdictKind.Substitute, true, "substituted by another kind")]
    [InlineData(VerdictKind.Replace, true, "new")]
    public void A_part_that_was_fitted_is_new_or_substituted_by_what_was_decided(VerdictKind verdict, bool isFitted, string word)
    {
        var document = Of(
            [new VerdictGiven(new("tank", verdict, DoneBy.Self, null)), .. _offAndOn, .. isFitted ? [_fitted] : Array.Empty<Happening>()]);
        Assert.Contains(Rows(document, "What is original, refurbished, substituted or new"),
            row => row.Cells[0] == "tank" && row.Cells[1] == word);
    }

    [Fact]
    public void What_was_to_be_renewed_and_is_not_shown_to_be_is_not_called_the_old_part()
    {
        var document = Of([new VerdictGiven(new("tank", VerdictKind.Replace, DoneBy.Self, null)), .. _offAndOn]);
        Assert.Contains(Said(document),
            said => said.Backing == Backing.Warns
                && said.Text.Contains("what is fitted is not shown by this log: tank", StringComparison.Ordinal));
        Assert.DoesNotContain(Said(document),
            said => said.Text.Contains("believed to be the ones that came off", StringComparison.Ordinal));
        var kept = Of([new VerdictGiven(new("tank", VerdictKind.Keep, DoneBy.Self, null)), .. _offAndOn]);
        Assert.Contains(Said(kept), said => said.Text.Contains("believed to be the ones that came off: tank", StringComparison.Ordinal));
    }

    [Fact]
    public void A_verdict_that_was_withdrawn_decides_nothing()
    {
        var document =
            Of([new VerdictGiven(new("tank", VerdictKind.Replace, DoneBy.Self, null)), new VerdictWithdrawn("tank"), .. _offAndOn]);
        Assert.Contains(Said(document),
            said => said.Text.Contains("believed to be the ones that came off: tank", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(true, "North Plating")]
    [InlineData(false, "a shop whose name is not given")]
    public void Work_by_others_says_what_who_and_when(bool names, string who)
    {
        var device = Device(new SentOut("North Plating", "zinc plated", [new("part tank", 1, null, [])], new(2026, 3, 2), null, new(80)));
        device.Write(new CameBack(device.Known[^1].Id, [new("part tank", 1, null, "even, thread clean", true)], new(2026, 3, 20)));
        var row = Assert.Single(Rows(Of(device, new(Prices: false, names, Hours: true, [])), "Work by others"));
        Assert.Equal(["tank", "zinc plated", who, "2026-03-02", "2026-03-20: even, thread clean"], row.Cells);
        Assert.Equal([3, 4], row.Entries);
    }

    /// <summary>What came back is not called unrecorded when its entry, or its words, are blacked out; without any entry it is.</summary>
    [Theory]
    [InlineData(true, false, "2026-03-20: what came back is blacked out by the owner")]
    [InlineData(true, true, "not shown; entry 4, blacked out by the owner, may tell of it")]
    [InlineData(false, false, "not recorded")]
    public void What_came_back_and_is_blacked_out_is_called_so(bool isBack, bool isHidden, string told)
    {
        var device = Device(new SentOut("North Plating", "zinc plated", [new("part tank", 1, null, [])], new(2026, 3, 2), null, null));
        if (isBack)
            device.Write(
                new CameBack(device.Known[^1].Id, [new("part tank", 1, null, "fetched from 12 Long Mill Road", true)], new(2026, 3, 20)));
        var row = Assert.Single(
            Rows(Of(device, Privacy.Standard with { Hidden = isHidden ? [device.Known[^1].Id] : [] }), "Work by others"));
        Assert.Equal(told, row.Cells[4]);
        Assert.Equal(isBack && !isHidden ? [3, 4] : [3], row.Entries);
    }

    [Fact]
    public void An_alignment_is_shown_before_and_after_and_its_absence_is_a_warning()
    {
        Assert.Contains(Said(Of([])),
            said => said.Backing == Backing.Warns && said.Text.Contains("No wheel alignment", StringComparison.Ordinal));
        var found = new AlignmentMeasured(true, [new("rl", 0.2m, -0.5m, null), new("rr", 0, null, null)], null, "laser rig", "A. Person");
        var document = Of([found, found with { AsFound = false, Wheels = [new("rl", 0.1m, -1.25m, 3.2m)] }]);
        var rows = Rows(document, "Torque and alignment record").ToList();
        Assert.Equal(["rear left", "toe 0.20°, camber -0.50°", "toe 0.10°, camber -1.25°, caster 3.20°"],
            rows.Single(row => row.Cells[0].Contains("left", StringComparison.Ordinal)).Cells);
        // ISO axes: left +0.20, right 0.00 is a thrust line 0.10 to the right.
        Assert.Equal("0.10° to the right", rows.Single(row => row.Cells[0] == "Thrust line").Cells[1]);
        Assert.DoesNotContain(Said(document), said => said.Text.Contains("No wheel alignment", StringComparison.Ordinal));
        Assert.DoesNotContain(Said(document), said => said.Text.Contains("A. Person", StringComparison.Ordinal));
        Assert.Contains(Said(Of([found])), said => said.Text.Contains("after the work", StringComparison.Ordinal));
    }

    [Fact]
    public void Torques_of_two_devices_that_never_met_are_undecided_until_an_entry_decides()
    {
        var (bench, phone) = (Device(new StepDone(Fact.Open("tank-body"), null, null), new StepReversed(Fact.Open("tank-body"), null)),
            new TestDevice("phone", 3));
        phone.Learn(bench.Known);
        bench.Write(new JointTightened("tank-body", Tightness.Torqued, new(45), null, null));
        phone.Write(new JointTightened("tank-body", Tightness.Torqued, new(54), null, null));
        bench.Learn(phone.Known);
        var document = Of(bench, Privacy.Standard);
        var row = Rows(document, "Torque and alignment record").Single(row => row.Cells[0].Contains("tank", StringComparison.Ordinal));
        Assert.Equal("undecided: 45 N·m or 54 N·m, neither knew of the other", row.Cells[1]);
        Assert.Equal(2, row.Entries.Count);
        Assert.Contains(Rows(document, "Open items"),
            open => open.Cells[1].Contains("neither knew of the other", StringComparison.Ordinal));

        bench.Write(new JointTightened("tank-body", Tightness.Torqued, new(54), null, null));
        Assert.DoesNotContain(Rows(Of(bench, Privacy.Standard), "Torque and alignment record"),
            one => one.Cells[1].Contains("undecided", StringComparison.Ordinal));
    }

    private static TestDevice Device(params Happening[] happenings)
    {
        var device = new TestDevice("bench");
        foreach (var happening in new Happening[] { new CarOpened("Heron", 1988, "EUR"),
            new StructureAdded("sheet", SmallCar.Structure, []) }.Concat(happenings))
            device.Write(happening);
        return device;
    }

    private static SaleDocument Of(Happening[] happenings) => Of(Device(happenings), Privacy.Standard);

    private static SaleDocument Of(TestDevice device, Privacy privacy) =>
        SaleFileWriter.Of(new()
        { History = device.History(), Made = DateTimeOffset.UnixEpoch, Fingerprint = "0000", Privacy = privacy }).Value;

    private static IEnumerable<Said> Said(SaleDocument document) => document.Sections.SelectMany(section => section.Blocks).OfType<Said>();

    private static IEnumerable<Row> Rows(SaleDocument document, string section) =>
        document.Sections.Single(one => one.Title == section).Blocks.OfType<Table>().SelectMany(table => table.Rows);
}
