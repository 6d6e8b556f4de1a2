using Refettle.Logbook;

namespace Refettle.Tests.Logbook;

public sealed class ChainCheckTests
{
    private static readonly Entry[] Log = Write();

    [Fact]
    public void A_true_log_has_no_break() => Assert.Empty(ChainCheck.Of(Log, Seal.Of(Log)));

    [Fact]
    public void Entries_that_have_not_arrived_at_the_end_are_not_held_against_an_unsealed_log() => Assert.Empty(ChainCheck.Of(Log.Take(6)));

    [Fact]
    public void A_changed_entry_is_named()
    {
        var changed = Log.Select(entry => entry == Log[3] ? entry with { Payload = """{"text":"forged"}""" } : entry);
        AssertBreak(ChainBreakKind.Changed, 4, Log[3].Id, ChainCheck.Of(changed));
    }

    [Fact]
    public void A_changed_newest_entry_is_named_by_the_seal()
    {
        var changed = Log.Select(entry => entry == Log[7] ? entry with { Payload = """{"text":"forged"}""" } : entry).ToArray();
        Assert.Empty(ChainCheck.Of(changed));
        AssertBreak(ChainBreakKind.Changed, 8, Log[7].Id, ChainCheck.Of(changed, Seal.Of(Log)));
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(3, 4)]
    public void A_removed_entry_is_named(int index, long sequence) =>
        AssertBreak(ChainBreakKind.Removed, sequence, null, ChainCheck.Of(Log.Where((_, i) => i != index)));

    [Fact]
    public void Entries_removed_at_the_end_are_named_by_the_seal()
    {
        var found = ChainCheck.Of(Log.Take(5), Seal.Of(Log));
        AssertBreak(ChainBreakKind.Removed, 6, null, found);
        Assert.Contains("6 to 8", found[0].Found, StringComparison.Ordinal);
        Assert.Equal(ChainBreakKind.Removed, Assert.Single(ChainCheck.Of([], Seal.Of(Log))).Kind);
    }

    [Fact]
    public void An_inserted_entry_is_named()
    {
        var copy = new TestDevice("bench", seed: 1);
        copy.Learn(Log.Take(4));
        var inserted = copy.Write(new Noted("inserted later", null));
        AssertBreak(ChainBreakKind.Inserted, 5, inserted.Id, ChainCheck.Of([.. Log, inserted]));
    }

    private static void AssertBreak(ChainBreakKind kind, long sequence, Guid? entry, ValueList<ChainBreak> found)
    {
        var only = Assert.Single(found);
        Assert.Equal((kind, sequence, entry, "bench"), (only.Kind, only.Sequence, only.Entry, only.Device));
        Assert.Contains("bench", only.ToFault().Place, StringComparison.Ordinal);
    }

    private static Entry[] Write()
    {
        var device = new TestDevice("bench");
        return [.. Enumerable.Range(1, 8).Select(i => device.Write(new Noted($"note {i}", null)))];
    }
}
