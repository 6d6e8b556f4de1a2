using Refettle.Logbook;
using Refettle.QuickLine;

namespace Refettle.Cli.Tests.QuickLines;

/// <summary>What a line becomes in the log.</summary>
public sealed class TellingTests
{
    private static readonly Car _car = new()
    {
        Id = "x",
        Name = "x",
        Structure = new()
        {
            Parts = [new() { Id = "body", Name = "Body shell" }, new() { Id = "rl-damper", Name = "Rear left damper" },
                new() { Id = "fl-ball-joint", Name = "Front left ball joint" }, new() { Id = "sill", Name = "Left sill panel" }],
            Joints = [new() { Id = "rl-damper-bolt", Name = "Rear left damper lower bolt", Holds = ["rl-damper", "body"], Ways = [] }],
        },
        Done = [Fact.Open("rl-damper-bolt")],
    };

    public static TheoryData<string, Happening[]> Lines => new()
    {
        { "rl damper leaks, need 1",
            [new Found(new() { Of = "part rl-damper", Scale = "damper", Word = "drips", Note = "rl damper leaks, need 1" }),
                new PiecesWanted("part rl-damper", 1)] },
        { "rl damper rusty, need 2", [new Noted("rl damper rusty, need 2", "part rl-damper"), new PiecesWanted("part rl-damper", 2)] },
        { "rl damper bolt snapped with the impact gun, need 2",
            [new Tried(new("rl-damper-bolt", "impact", JointCondition.SnappedFlush, false, null)),
                new PiecesWanted("joint rl-damper-bolt", 2)] },
        { "rl damper leaks, need 20 minutes",
            [new Found(new() { Of = "part rl-damper", Scale = "damper", Word = "drips", Note = "rl damper leaks, need 20 minutes" })] },
        { "fl ball joint has play",
            [new Found(new() { Of = "part fl-ball-joint", Scale = "ball-joint", Word = "play", Note = "fl ball joint has play" })] },
        { "left sill holed", [new Found(new() { Of = "part sill", Scale = "perforation", Word = "holes", Note = "left sill holed" })] },
        { "rl damper rusty", [new Noted("rl damper rusty", "part rl-damper")] },
        { "rl damper bolt held, soaked, 20 min", [new Tried(new("rl-damper-bolt", "soak", null, true, new(20)))] },
        { "rl damper bolt snapped with the impact gun",
            [new Tried(new("rl-damper-bolt", "impact", JointCondition.SnappedFlush, false, null))] },
        { "rl damper bolt stuck", [new Noted("rl damper bolt stuck", "joint rl-damper-bolt")] },
        { "rl damper bolt torqued to 90",
            [new StepReversed(Fact.Open("rl-damper-bolt"), null),
                new JointTightened("rl-damper-bolt", Tightness.Torqued, new(90), null, null)] },
        { "rl damper bolt torqued to 90 lbf ft",
            [new StepReversed(Fact.Open("rl-damper-bolt"), null), new JointTightened("rl-damper-bolt", Tightness.Torqued, null, null, null),
                new Noted("rl damper bolt torqued to 90 lbf ft", "joint rl-damper-bolt")] },
        { "torqued 5 rl damper bolts",
            [new StepReversed(Fact.Open("rl-damper-bolt"), null), new JointTightened("rl-damper-bolt", Tightness.Torqued, null, null, null),
                new Noted("torqued 5 rl damper bolts", "joint rl-damper-bolt")] },
        { "torqued the rl damper bolt, took 10 minutes",
            [new StepReversed(Fact.Open("rl-damper-bolt"), null), new JointTightened("rl-damper-bolt", Tightness.Torqued, null, null, null),
                new Noted("torqued the rl damper bolt, took 10 minutes", "joint rl-damper-bolt")] },
        { "rl damper bolt not torqued yet", [new Noted("rl damper bolt not torqued yet", "joint rl-damper-bolt")] },
        { "rl damper bolt still to be torqued to 90 Nm",
            [new Noted("rl damper bolt still to be torqued to 90 Nm", "joint rl-damper-bolt")] },
        { "rl damper bolt needs 90 Nm", [new Noted("rl damper bolt needs 90 Nm", "part rl-damper")] },
        { "rl damper bolt should be 90 Nm", [new Noted("rl damper bolt should be 90 Nm", "joint rl-damper-bolt")] },
        { "rl damper not off yet", [new Noted("rl damper not off yet", "part rl-damper")] },
        { "rl damper will come off tomorrow", [new Noted("rl damper will come off tomorrow", "part rl-damper")] },
        { "rl damper is not back on", [new Noted("rl damper is not back on", "part rl-damper")] },
        { "rl damper bolt broke loose with the impact gun",
            [new Tried(new("rl-damper-bolt", "impact", JointCondition.Freed, false, null)),
                new Noted("rl damper bolt broke loose with the impact gun", "joint rl-damper-bolt")] },
        { "fl ball joint hard to reach, play",
            [new Found(new()
                { Of = "part fl-ball-joint", Scale = "ball-joint", Word = "play", Note = "fl ball joint hard to reach, play" })] },
        { "rl damper does not leak", [new Noted("rl damper does not leak", "part rl-damper")] },
        { "fl ball joint, no play", [new Noted("fl ball joint, no play", "part fl-ball-joint")] },
        { "rl damper bolt not rounded, held with the impact gun",
            [new Tried(new("rl-damper-bolt", "impact", null, false, null)),
                new Noted("rl damper bolt not rounded, held with the impact gun", "joint rl-damper-bolt")] },
        { "rl damper off, 1 hour 20 minutes",
            [new StepDone(Fact.Off("rl-damper"), null, new(80)), new Noted("rl damper off, 1 hour 20 minutes", "part rl-damper")] },
        { "rl damper off in one and a half hours",
            [new StepDone(Fact.Off("rl-damper"), null, null), new Noted("rl damper off in one and a half hours", "part rl-damper")] },
        { "bag 14 is not empty", [new Noted("bag 14 is not empty", null)] },
        { "rl damper bolt snug",
            [new StepReversed(Fact.Open("rl-damper-bolt"), null), new JointTightened("rl-damper-bolt", Tightness.Snug, null, null, null)] },
        { "rl damper off 25 min", [new StepDone(Fact.Off("rl-damper"), null, new(25))] },
        { "rl damper off beside the kerosene",
            [new StepDone(Fact.Off("rl-damper"), null, null), new Noted("rl damper off beside the kerosene", "part rl-damper")] },
        { "ride height rear left three hundred and eighty two", [new HeightMeasured("rl", new(382))] },
        { "bag 14 four washers", [new BagPacked("14", "four washers", [], null)] },
        { "bag 14 is in the blue box", [new BagMoved("14", "the blue box")] },
        { "bag 14 empty", [new BagEmptied("14")] },
        { "bag 12 on shelf 2", [new BagMoved("12", "shelf 2")] },
        { "bag 12 under seat bolts", [new BagPacked("12", "under seat bolts", ["joint rl-damper-bolt"], null)] },
        { "bag 12 - 4 washers", [new BagPacked("12", "4 washers", [], null)] },
        { "bags 12 and 13 on shelf 2", [new BagMoved("12", "shelf 2"), new BagMoved("13", "shelf 2")] },
        { "bags 12, 13 and 14 are in the blue box",
            [new BagMoved("12", "the blue box"), new BagMoved("13", "the blue box"), new BagMoved("14", "the blue box")] },
        { "bag twelve and bag a7 moved to shelf 2", [new BagMoved("12", "shelf 2"), new BagMoved("a7", "shelf 2")] },
        { "bags 12 and 13 are empty", [new BagEmptied("12"), new BagEmptied("13")] },
        { "bags 12 to 14 on shelf 2", [new Noted("bags 12 to 14 on shelf 2", null)] },
        { "bags 12-14 on shelf 2", [new Noted("bags 12-14 on shelf 2", null)] },
        { "bags 12 and 13 shims", [new Noted("bags 12 and 13 shims", null)] },
        { "bags 12 four washers", [new BagPacked("12", "four washers", [], null)] },
        { "milk", [new Noted("milk", null)] },
    };

    [Theory]
    [MemberData(nameof(Lines))]
    public void A_line_becomes_these_entries(string line, Happening[] entries)
    {
        var answer = new LineReader(_car.Structure).Read(line);
        Assert.Equal(entries, Telling.Of(_car, answer, answer.Best));
    }

    [Fact]
    public void Of_a_try_the_other_outcome_is_offered_next()
    {
        var readings = new LineReader(_car.Structure).Read("rl damper bolt moved after a soak").Readings;
        Assert.Equal([JointCondition.Freed, null], readings.Take(2).Select(reading => reading.Becomes));
        Assert.Equal(readings[0].About, readings[1].About);
    }

    [Fact]
    public void A_line_that_names_nothing_is_about_what_one_looks_at()
    {
        var answer = new LineReader(_car.Structure).Read("leaks", "part rl-damper");
        Assert.Equal("part rl-damper", answer.Best.About);
        Assert.Equal("part rl-damper", new LineReader(_car.Structure).Read("zzz", "part rl-damper").Best.About);
    }
}
