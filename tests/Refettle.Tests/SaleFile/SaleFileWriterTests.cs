using CsCheck;
using Refettle.Logbook;
using Refettle.SaleFile;
using Refettle.Tests.Logbook;

namespace Refettle.Tests.SaleFile;

public sealed class SaleFileWriterTests
{
    private static readonly Structure Watched = SmallCar.Structure with
    {
        Parts = [.. SmallCar.Structure.Parts.Select(part => part.Id == "tank" ? part with { Duties = [Duty.Emissions] } : part)],
        Joints = [.. SmallCar.Structure.Joints
            .Select(joint => joint.Id == "damper-body" ? joint with { AtRideHeight = true, Torque = new(60) } : joint)],
    };

    [Fact]
    public void A_parts_story_runs_from_before_to_after()
    {
        var document = Of(new Noted("leaks at the seam", "part tank"), new StepDone(Fact.Off("tank"), null, new(20)),
            new StepReversed(Fact.Off("tank"), null), new StepReversed(Fact.Open("tank-body"), null),
            new Noted("dry after a week", "part tank"));
        var row = Rows(document, "Condition before and after").Single(row => row.Cells[0] == "tank");
        Assert.Equal(("“leaks at the seam”", "“dry after a week”; on the car"), (row.Cells[1], row.Cells[3]));
        Assert.Equal([3, 4, 5, 7], row.Entries);
    }

    [Fact]
    public void What_is_not_shown_is_worded_as_belief()
    {
        var document = Of(new StepDone(Fact.Off("tank"), null, null), new StepReversed(Fact.Off("tank"), null),
            new Declared(DeclarationTopic.Claim, "It runs well.", null, []),
            new Declared(DeclarationTopic.Title, "In my name since 2019", null, []));
        Assert.Contains(Said(document),
            said => said.Backing == Backing.Believed
                && said.Text.Contains("believed to be the ones that came off: tank", StringComparison.Ordinal));
        Assert.All(Said(document)
            .Where(said => said.Text.Contains("It runs well", StringComparison.Ordinal)
                || said.Text.Contains("In my name", StringComparison.Ordinal)),
            said => Assert.StartsWith("To the best of the owner's knowledge", said.Text, StringComparison.Ordinal));
    }

    [Fact]
    public void A_claim_that_promises_too_much_is_left_out_and_told()
    {
        var result = Answer(new Declared(DeclarationTopic.Claim, "It is rust-free.", null, []));
        Assert.DoesNotContain(Said(result.Value), said => said.Text.Contains("rust-free", StringComparison.Ordinal));
        Assert.Contains("To the best of my knowledge", Assert.Single(result.Faults).Mend, StringComparison.Ordinal);
    }

    [Fact]
    public void A_claim_names_the_entries_that_show_it()
    {
        var device = Device(new Noted("fitted from the sealed pack", "part damper"));
        device.Write(new Declared(DeclarationTopic.Claim, "Damper renewed.", "part damper", [device.Known[^1].Id]));
        var claim = Said(Answer(device.History()).Value).Single(said => said.Text.Contains("Damper renewed", StringComparison.Ordinal));
        Assert.Equal((Backing.Recorded, [3, 4]), (claim.Backing, claim.Entries));
    }

    /// <summary>A car that is whole again has still to be driven: what opened work asks for is open until it is marked, and
    /// open again after the next opening.</summary>
    [Fact]
    public void A_check_is_open_until_it_is_marked()
    {
        Happening[] closed = [new StepDone(Fact.Open("damper-body"), null, null), new StepReversed(Fact.Open("damper-body"), null),
            new JointTightened("damper-body", Tightness.Torqued, new(60), null, null)];
        Happening[] aligned = [.. closed, new TaskMarked(new("check.alignment", TaskProgress.Done, new(2027, 3, 1, 10, 0)))];
        Assert.Contains(Rows(Of(closed), "Open items"), row => row.Cells[0].StartsWith("Align:", StringComparison.Ordinal));
        Assert.DoesNotContain(Rows(Of(closed), "Torque and alignment record"), row => row.Cells[0] == "Wheels aligned");
        Assert.DoesNotContain(Rows(Of(aligned), "Open items"), row => row.Cells[0].StartsWith("Align:", StringComparison.Ordinal));
        Assert.Contains(Rows(Of(aligned), "Torque and alignment record"), row => row.Cells[0] == "Wheels aligned");
        Assert.Contains(Rows(Of([.. aligned, closed[0], closed[1]]), "Open items"),
            row => row.Cells[0].StartsWith("Align:", StringComparison.Ordinal));
    }

    /// <summary>Closed and filled afterwards: nobody has bled it since. Whoever bleeds it then is told.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Brakes_marked_as_bled_while_a_union_was_open_are_not_told_as_bled(bool isClosedAfterwards)
    {
        Happening[] opened = [new StructureAdded("sheet", Hydraulics, []), new StepDone(Fact.State("brakes-drained"), null, null),
            new StepDone(Fact.Open("union"), null, null),
            new StepDone(Fact.Open("tank-body"), null, null), new StepReversed(Fact.Open("tank-body"), null)];
        Happening bled = new TaskMarked(new("check.bleed", TaskProgress.Done, new(2026, 5, 4, 18, 0)));
        Happening[] closed = [new StepReversed(Fact.Open("union"), null), new StepReversed(Fact.State("brakes-drained"), null)];
        Assert.DoesNotContain(Rows(Of([.. opened, bled, .. isClosedAfterwards ? closed : []]), "Torque and alignment record"),
            row => row.Cells[0] == "Brakes bled");
        Assert.Contains(Rows(Of([.. opened, bled, .. closed, bled]), "Torque and alignment record"), row => row.Cells[0] == "Brakes bled");
    }

    [Fact]
    public void A_mark_that_changed_nothing_is_no_work()
    {
        var document = Of(new StepReversed(Fact.Off("tank"), new(9)), new StepDone(Fact.Open("damper-body"), null, new(20)),
            new StepDone(Fact.Open("damper-body"), null, new(9)));
        Assert.Equal([4], Assert.Single(Rows(document, "What was done, day by day")).Entries);
        Assert.DoesNotContain(document.Sections.SelectMany(section => section.Blocks).OfType<Table>().SelectMany(table => table.Rows),
            row => row.Cells.Any(cell => cell.Contains("fitted", StringComparison.Ordinal)));
        Assert.Contains(Said(document), said => said.Text.StartsWith("0.3 hours are recorded, in 1 timed step", StringComparison.Ordinal));
        var log = SaleFileWriter.Log(document, Watched).Select(line => line.Says).ToList();
        Assert.Equal("tank: marked as fitted; it was not off", log[2]);
        Assert.EndsWith("opened: marked once more", log[4], StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_still_away_at_a_shop_is_told()
    {
        var device = Device(
            new SentOut("Northgate", "blasting", [new("part tank", 1, null, []), new("bolts", 3, null, [])], Day, null, null));
        device.Write(new CameBack(device.Known[^1].Id, [new("bolts", 1, null, "clean", true)], Day));
        Assert.Equal("2026-12-08: clean; still away: tank, 2 × bolts",
            Rows(Answer(device.History()).Value, "Work by others").Single().Cells[4]);
        device.Write(
            new CameBack(device.Known[2].Id, [new("bolts", 2, null, "clean", true), new("part tank", 1, null, "clean", true)], Day));
        Assert.DoesNotContain("away", Rows(Answer(device.History()).Value, "Work by others").Single().Cells[4], StringComparison.Ordinal);
    }

    /// <summary>Put on by the shelf, and by the steps the part is still off: both are told.</summary>
    [Fact]
    public void A_piece_recorded_for_a_part_that_is_off_is_told_as_that()
    {
        var document = Of(new StepDone(Fact.Off("tank"), null, null),
            new PiecesMoved(new("T-1", PieceCondition.Used), 1, StockPlace.Shelf, StockPlace.On(TestDevice.Car, "part tank"), Day, null));
        Assert.Equal("used, from elsewhere; off the car when this file was made",
            Assert.Single(Rows(document, "What is original, refurbished, substituted or new")).Cells[1]);
        Assert.DoesNotContain(Said(document), said => said.Text.StartsWith("No new, used", StringComparison.Ordinal));
    }

    [Fact]
    public void Watched_equipment_that_is_off_is_disclosed_on_the_first_page_too()
    {
        var document = Of(new StepDone(Fact.Off("tank"), null, null));
        var warning = Assert.Single(document.Sections.Single(section => section.Title == "Disclosures").Blocks.OfType<Said>());
        Assert.Equal(Backing.Warns, warning.Backing);
        Assert.Contains("may not be legal on the road in your place", warning.Text, StringComparison.Ordinal);
        Assert.Contains(document.Sections[0].Blocks.OfType<Said>(),
            said => said.Text.Contains("Emissions or safety equipment is concerned: tank", StringComparison.Ordinal));
        var back = Of(new StepDone(Fact.Off("tank"), null, null), new StepReversed(Fact.Off("tank"), null));
        Assert.DoesNotContain(Said(back), said => said.Text.Contains("concerned", StringComparison.Ordinal));
    }

    [Fact]
    public void Only_the_tightening_since_the_last_opening_counts()
    {
        var document = Of(new StepDone(Fact.Open("damper-body"), null, null),
            new JointTightened("damper-body", Tightness.Torqued, new(55), null, null),
            new StepDone(Fact.Open("damper-body"), null, null), new StepReversed(Fact.Open("damper-body"), null),
            new StanceTaken("on-wheels"),
            new JointTightened("damper-body", Tightness.Torqued, new(60), "wrench", null) { Checks = [TighteningCheck.PaintMark] });
        var row = Assert.Single(Rows(document, "Torque and alignment record"));
        Assert.Contains("torqued to 60 N·m with wrench, paint-marked", row.Cells[1], StringComparison.Ordinal);
        Assert.Contains(Said(document), said => said.Text.Contains("1 is recorded as torqued at ride height", StringComparison.Ordinal));
    }

    [Fact]
    public void Any_log_gives_a_file_that_is_fit_to_give_away() => RandomLog.Entries.Sample(entries =>
    {
        var hidden = Privacy.Standard with { Hidden = entries.Where((_, i) => i % 5 == 4).Select(entry => entry.Id).ToValueList() };
        var document = SaleFileWriter.Of(Question(CarHistory.Of(TestDevice.Car, entries)) with { Privacy = hidden }).Value;
        return DocumentCheck.Of(document).Count == 0 && DocumentCheck.Words(document.Sections[0]) <= 250
            && document.Entries.Count == entries.DistinctBy(entry => entry.Id).Count();
    }, iter: 200);

    [Fact]
    public void The_check_sees_what_is_not_fit()
    {
        var document = Of(new StepDone(Fact.Off("tank"), null, null));
        Section With(params Block[] blocks) => new("Test", [.. blocks]);
        Assert.NotEmpty(DocumentCheck.Of(document with
        { Sections = [With(new Said(string.Join(' ', Enumerable.Repeat("word", 251)), Backing.Explains, []))] }));
        Assert.NotEmpty(DocumentCheck.Of(document with { Sections = [With(new Said("It was done", Backing.Recorded, []))] }));
        Assert.NotEmpty(DocumentCheck.Of(document with { Sections = [With(), With(new Said("It was done", Backing.Recorded, [999]))] }));
        Assert.NotEmpty(
            DocumentCheck.Of(document with { Sections = [With(new Pictures([.. Enumerable.Repeat(new Picture("p", 1, 1, "", 1), 3)]))] }));
    }

    private static readonly DateOnly Day = new(2026, 12, 8);

    private static readonly Structure Hydraulics = new()
    {
        Parts = [new() { Id = "hose", Name = "Hose", Hazards = [Hazard.BrakeFluid] }],
        Joints = [new()
            { Id = "union", Kind = JointKind.Pipe, Holds = ["hose", "body"], Ways = [new() { Id = "spanner", Tool = "spanner" }] }],
        States = [new() { Id = "brakes-drained", Name = "Brakes drained", Ways = [new() { Id = "pump", Tool = "pump" }] }],
    };

    private static SaleDocument Of(params Happening[] happenings) => Answer(happenings).Value;

    private static Result<SaleDocument> Answer(params Happening[] happenings) => Answer(Device(happenings).History());

    private static Result<SaleDocument> Answer(CarHistory history) => SaleFileWriter.Of(Question(history));

    private static TestDevice Device(params Happening[] happenings)
    {
        var device = new TestDevice("bench");
        foreach (var happening
            in new Happening[] { new CarOpened("Heron", 1988, "EUR"), new StructureAdded("sheet", Watched, []) }.Concat(happenings))
            device.Write(happening);
        return device;
    }

    private static SaleQuestion Question(CarHistory history) =>
        new() { History = history, Made = DateTimeOffset.UnixEpoch, Fingerprint = "0000" };

    private static IEnumerable<Said> Said(SaleDocument document) => document.Sections.SelectMany(section => section.Blocks).OfType<Said>();

    private static IEnumerable<Row> Rows(SaleDocument document, string section) =>
        document.Sections.Single(one => one.Title == section).Blocks.OfType<Table>().SelectMany(table => table.Rows);
}
