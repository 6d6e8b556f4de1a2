using Refettle.Stuck;

namespace Refettle.Sheets.Tests.Ladders;

public sealed class LadderReaderTests
{
    [Fact]
    public void The_shipped_ladders_read_clean_and_serve_every_kind_of_joint()
    {
        var set = LadderReader.Load(Path.Combine(Root(), "ladders"));
        Assert.True(set.IsGood, string.Join("\n", set.Faults));
        foreach (var kind in Enum.GetValues<JointKind>())
        {
            var ladders = set.Value.For(kind);
            Assert.Equal(6, ladders.Count);
            var question = new NextTryQuestion { Ladders = ladders, Belief = [0.2, 0.2, 0.2, 0.2, 0.2] };
            Assert.True(TryPlanner.Best(question).ExpectedMinutes > 0);
        }
    }

    [Theory]
    [InlineData("odds: [1, 1, 1, 1, 1]", "odds: [1, 1, 1]", "chances are missing")]
    [InlineData("odds: [1, 1, 1, 1, 1]", "odds: [0.5, 1, 1, 1, 1]", "no sure rung")]
    public void A_ladder_with_a_hole_in_it_is_refused(string from, string to, string found)
    {
        const string good = """
            refettle-ladder: 1
            ladder: x
            name: X
            origin: made up
            rungs:
              cut: { says: Cut, takes: 5 min, odds: [1, 1, 1, 1, 1] }
            """;
        var read = LadderReader.Read(good, "x.yaml");
        Assert.True(read.IsGood, string.Join("\n", read.Faults));
        Assert.Empty(new LadderSet([read.Value]).Check());
        var bad = LadderReader.Read(good.Replace(from, to, StringComparison.Ordinal), "x.yaml");
        Assert.Contains(new LadderSet([bad.Value]).Check(), fault => fault.Found.Contains(found, StringComparison.Ordinal));
    }

    private static string Root()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "Refettle.slnx")))
            folder = Path.GetDirectoryName(folder)!;
        return folder;
    }
}
