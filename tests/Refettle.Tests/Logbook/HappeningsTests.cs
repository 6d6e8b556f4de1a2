using Refettle.Logbook;

namespace Refettle.Tests.Logbook;

public sealed class HappeningsTests
{
    private static readonly Happening[] OfEachKind =
    [
        new CarOpened("Heron \"estate\" ½", null, "EUR"),
        new StructureAdded("sheet small.yaml", SmallCar.Structure, ["drum-brake-corner rl/hub"]),
        new StructureRemoved(["part tank", "joint wheel-axle"]),
        new StepDone(Fact.Open("tank-body"), "spanner", new(4.50m)),
        new StepDone(Fact.Off("tank"), null, null),
        new StepReversed(Fact.Off("tank"), new(3)),
        new Tried(new("bolt", "impact", JointCondition.Rounded, true, new(6))),
        new Found(new() { Of = "part tank", Scale = "rust", Word = "C", Photos = [new('a', 64)], Note = "seam" }),
        new Found(new()
            { Of = "joint tank-body", Scale = "fastener", Reading = new("running torque", [0.8m, 0.9m], "N·m", "wrench 2–10", 0.1m) }),
        new LimitSet(new("part tank", "wall thickness", 0.8m, null, "mm", Origin.User, "own drawing")),
        new VerdictGiven(new("tank", VerdictKind.Refurbish, DoneBy.OutsideShop, "no other to be had")),
        new PartEstimated(new("tank", new(180), new(25), new(140), 21, new(320), 30, null, null, "body")),
        new VerdictWithdrawn("tank"),
        new BaselineTold(new("shims", "two left, one right", null, [])),
        new BaselineTold(new("compression", null, "engine does not turn", [])),
        new ProductDescribed(new()
        {
            Id = "grey-epoxy", Name = "Grey epoxy", Kind = CoatingKind.EpoxyPrimer, Sheet = "sheet 4, issue 2", Mix = "4:1",
            WhenLate = "abrade", Hazards = [CoatingHazard.EpoxyResin],
            Recoat = [new(20, 16, 168, false, Origin.Maker), new(10, 30, null, true, Origin.User)],
            Figures = [new(FigureKind.PotLife, 90.5m, Origin.Maker)],
        }),
        new CoatingSystemDescribed(new("chassis", "Chassis", [new("grey-epoxy"), new("black-top", 2)])),
        new CoatingChosen("chassis", [new("tank", 0.8m), new("body", null)]),
        new CoatingChosen(null, [new("tank", null)]),
        new CoatApplied(new("grey-epoxy", ["tank"], new(2027, 1, 9, 14, 30), 1, 16, 62.5m, null, [61, 58])),
        new KeptBare(new("tank", "earth point", "paint does not conduct")),
        new SoakBegun("tank-body", "soak", new(2027, 1, 9, 18, 30, 0, TimeSpan.FromHours(1))),
        new ReachJudged(new("tank-body", "impact", false, [Fact.Off("tank")])),
        new MissingAccepted("tank-body", "cut", "nuts come on Friday"),
        new StanceTaken("on-stands"),
        new SoundnessJudged("body", false),
        new JointTightened("tank-body", Tightness.Torqued, new(48.5m), "wrench 20–100", null),
        new JointTightened("tank-body", Tightness.Snug, null, null, "me"),
        new JointTightened("tank-body", Tightness.Torqued, new(48), null, null)
            { Checks = [TighteningCheck.SecondPerson, TighteningCheck.PaintMark] },
        new HeightMeasured("rl", new(382)),
        new AlignmentMeasured(true, [new("rl", 0.2m, -0.5m, null), new("rr", 0, null, 3.1m)], 0.1m, "rig", null),
        new JobEntered(Jobs.Tank),
        new JobDropped("tank", "it is good"),
        new JobDone("tank", new(95)),
        new MeansSet(new(new(1500), new(3600), new(2027, 5, 8), new(12.5m))),
        new ScopeChosen(["tank"]),
        new BagPacked("14", "four washers, thick ones outside", ["joint tank-body"], null),
        new BagMoved("14", "blue box"),
        new BagEmptied("14"),
        new PhotoTaken(new()
            { Hash = new('a', 64), Width = 1600, Height = 1200, Small = new('b', 64), Of = ["part tank", "bag 14"], Says = "seam",
                Sharpness = 143.5 }),
        new SettingsChosen(new() { PerHour = new(42.5m), Lifted = ["tank"] }),
        new SpellAdded(new()
            { Id = "evenings", First = new(2027, 1, 5), From = new(18, 30), Until = new(21, 30),
                Repeats = new(Rhythm.Weekly, 1, [NodaTime.IsoDayOfWeek.Tuesday], new(2027, 2, 16)), Except = [new(2027, 1, 12)] }),
        new SpellAdded(new() { Id = "night", Whose = "neighbour", First = new(2027, 1, 9), From = new(22, 0), Until = new(1, 30) }),
        new SpellRemoved("night"),
        new SpellMissed("evenings", new(2027, 1, 19)),
        new TimeZoneChosen("Europe/Berlin"),
        new HandoverSet(new(new(2027, 2, 20, 10, 0), "spring meeting")),
        new HandoverSet(null),
        new FacilityAdded(new() { Id = "neighbour", Name = "Neighbour", Kind = FacilityKind.Helper, From = new(2027, 1, 1) }),
        new FacilityRemoved("neighbour"),
        new ClimateExpected([new(1, 4.5m, 85, Origin.User), new(2, 6, 80, Origin.Measured)]),
        new ClimateRead(new(new(2027, 1, 9), 14.5m, 55)),
        new TaskAdded(new()
            { Id = "polish", Name = "Polish", Takes = new(90), After = ["coat.bonnet.2"], IsUnbroken = true, Uses = ["lift"] }),
        new TaskRemoved("polish"),
        new TaskTimed("polish", new(120)),
        new TaskSplit("polish", [new(30), new(60)]),
        new TaskFixed("polish", new(2027, 1, 9, 10, 0)),
        new TaskFixed("polish", null),
        new TaskForbidden("polish", new(new(2027, 1, 4), new(2027, 1, 8))),
        new TaskEquipped("job.floor", ["bay"]),
        new TaskMarked(new("polish", TaskProgress.Begun, new(2027, 1, 9, 10, 0))),
        new TimelineKept([new("polish", new(2027, 1, 9, 10, 0), new(2027, 1, 9, 11, 30))]),
        new MoneySpent(new(new(42.50m), "sanding discs", SpendKind.Consumables, "job tank",
            Guid.Parse("0195f000-1234-7abc-8def-0123456789ad"), new('c', 64), new(2027, 1, 9))),
        new MoneySpent(new(new(12), "deposit", SpendKind.Parts, null, null, null, new(2027, 1, 10), IsRefund: true)),
        new Noted("four washers, thick ones outside 🔩", "part tank"),
        new Declared(DeclarationTopic.RoadTest, "passed", "part tank", [Guid.Parse("0195f000-1234-7abc-8def-0123456789ab")]),
        new Struck(Guid.Parse("0195f000-1234-7abc-8def-0123456789ab"), null),
        .. OfStock,
    ];

    private static readonly Guid Some = Guid.Parse("0195f000-1234-7abc-8def-0123456789ac");

    private static Happening[] OfStock =>
    [
        new NumberDescribed(new()
            { Id = "44-1", SupersededBy = "44-2", Substitutes = [new("X", "cut a slit")], Contains = [new("S", 2)], Breaks = 0.3m },
            [Some]),
        new NumberAssigned("part tank", "44-1", 2),
        new NumberAssigned("part tank", null, 1),
        new PiecesMoved(new("44-1", PieceCondition.Used, new(2024, 2, 29), null), 3, StockPlace.Shelf, StockPlace.On("heron", "part tank"),
            new(2026, 3, 1), null),
        new KitOpened(new("K"), 1, [new("S", new("S"), 2)]),
        new MadeUp(new("PIPE"), 1, [new("S", new("S"), 2)]),
        new Reserved("part tank", "44-1", 2),
        new PiecesWanted("part tank", 2),
        new Ordered("Harbour Rubber", [new("44-1", 2, new(3.20m))], new(2026, 3, 1), new(2026, 3, 9), 30, new(6)),
        new OrderPromised(Some, new(2026, 3, 12)),
        new OrderCancelled(Some, [new("44-1", 1)]),
        new Arrived(Some, [new("44-1", new("44-2"), 1)], new(2026, 3, 10)),
        new SentBack(Some, [new("44-1", new("44-2"), 1)], new(2026, 3, 11), "too long"),
        new TrialFitted(Some, "44-2", 1, false, "too long", new(2026, 3, 12)),
        new OffersListed("Harbour Rubber", "EUR", [new("44-1", "Bush", new(3.20m), 2, 2, 7)], new(2026, 3, 1)),
        new SentOut("Plater", "zinc", [new("part tank", 1, null, ["a.jpg"]), new("bolts", 8, new("B"), [])], new(2026, 3, 1), null, null),
        new CameBack(Some, [new("bolts", 7, new("B", PieceCondition.Refurbished), "one missing", true)], new(2026, 4, 1)),
    ];

    public static TheoryData<Happening> All => new(OfEachKind);

    [Theory]
    [MemberData(nameof(All))]
    public void What_is_encoded_is_read_back(Happening happening)
    {
        var entry = new TestDevice("bench").Write(happening);
        Assert.Equal(happening, Happenings.Decode(entry).Value);
        Assert.Contains(entry.Kind, Happenings.Words);
    }

    [Fact]
    public void Every_kind_of_happening_has_a_word_of_its_own()
    {
        var kinds = typeof(Happening).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(Happening)) && !type.IsAbstract).ToList();
        Assert.Equal(kinds.Count, Happenings.Words.Distinct().Count());
        Assert.Equal(Happenings.Words.Order(), OfEachKind.Select(happening => Happenings.KindOf(happening).Kind).Distinct().Order());
    }

    [Theory]
    [InlineData("tune-hummed", 1)]
    [InlineData("noted", 2)]
    public void What_a_newer_version_wrote_is_kept_and_changes_nothing(string kind, int version)
    {
        var history = SmallCar.After(new Noted("x", null));
        var entries = history.Lines.Select(line => line.Entry).ToArray();
        entries[^1] = entries[^1] with { Kind = kind, Version = version };
        var newer = CarHistory.Of(TestDevice.Car, entries);
        Assert.Equal(Standing.FromNewerVersion, newer.Lines[newer.Lines.Count - 1].Standing);
        Assert.Equal(history.Car, newer.Car);
    }

    [Theory]
    [InlineData("step-done", "{}")]
    [InlineData("step-done", """{"fact":null}""")]
    [InlineData("step-done", """{"fact":"tank"}""")]
    [InlineData("step-done", """{"fact":"off(tank)","took":"3 min"}""")]
    [InlineData("noted", "null")]
    [InlineData("noted", "[]")]
    [InlineData("noted", """{"text":"a","text":"b"}""")]
    [InlineData("structure-removed", """{"things":[null]}""")]
    [InlineData("structure-added", """{"source":"x","added":{"parts":[{"id":"a"}]},"tied":[]}""")]
    [InlineData("structure-added", """{"source":"x","added":{"parts":[null]},"tied":[]}""")]
    [InlineData("settings-chosen", """{"settings":null}""")]
    public void A_known_kind_that_cannot_be_read_is_kept_and_says_so(string kind, string payload)
    {
        var entry = new TestDevice("bench").Write(new Noted("x", null)) with { Kind = kind, Payload = payload };
        var line = Assert.Single(CarHistory.Of(TestDevice.Car, [entry]).Lines);
        Assert.Equal(Standing.NotApplied, line.Standing);
        Assert.NotEmpty(line.Reason!);
    }
}
