using Refettle.Logbook;

namespace Refettle.Storage.Tests;

public sealed class SeveralWritersTests
{
    private const int Each = 60;

    [Fact]
    public void Two_processes_write_at_once_into_one_unbroken_chain()
    {
        using var shelf = new Shelf();
        using var one = WriterProcess.Start(shelf.File, Each, "one");
        using var other = WriterProcess.Start(shelf.File, Each, "other");
        var acknowledged = one.Finish().Acknowledged.Concat(other.Finish().Acknowledged).ToHashSet();
        using var logbook = shelf.Open();
        var entries = logbook.Read("heron").Select(kept => kept.Entry).ToList();
        Assert.Equal(2 * Each, acknowledged.Count);
        Assert.Equal(acknowledged, entries.Select(entry => entry.Id).ToHashSet());
        Assert.Equal(Enumerable.Range(1, 2 * Each).Select(i => (long)i), entries.Select(entry => entry.Sequence));
        Assert.Empty(ChainCheck.Of(entries));
    }

    [Fact]
    public void Several_threads_write_and_read_at_once()
    {
        using var shelf = new Shelf();
        using var logbook = shelf.Open();
        Parallel.For(0, 4, thread =>
        {
            for (var i = 0; i < 25; i++)
            {
                Assert.True(logbook.Write("heron", new Noted($"{thread} {i}", null)).IsGood);
                Assert.Empty(ChainCheck.Of(logbook.Read("heron").Select(kept => kept.Entry)));
            }
        });
        Assert.Equal(100, logbook.Read("heron").Count());
    }

    /// <summary>On a POSIX system Process.Kill sends SIGKILL (.NET documentation).</summary>
    [Fact]
    public async Task What_was_acknowledged_survives_a_kill()
    {
        using var shelf = new Shelf();
        var acknowledged = new HashSet<Guid>();
        for (var round = 0; round < 5; round++)
        {
            using var writer = WriterProcess.Start(shelf.File, 1_000_000, $"{round}");
            await writer.First;
            writer.Kill();
            acknowledged.UnionWith(writer.Finish().Acknowledged);
        }

        using var logbook = shelf.Open();
        var entries = logbook.Read("heron").Select(kept => kept.Entry).ToList();
        Assert.Subset(entries.Select(entry => entry.Id).ToHashSet(), acknowledged);
        Assert.Empty(ChainCheck.Of(entries));
    }
}
