using Microsoft.Data.Sqlite;
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
        var ends = new[] { one.Finish(), other.Finish() };
        Assert.All(ends, end => Assert.Equal("", end.Complaint));
        var acknowledged = ends.SelectMany(end => end.Acknowledged).ToHashSet();
        using var logbook = shelf.Open();
        var entries = logbook.Read("heron").Select(kept => kept.Entry).ToList();
        Assert.Equal(2 * Each, acknowledged.Count);
        Assert.Equal(acknowledged, entries.Select(entry => entry.Id).ToHashSet());
        Assert.Equal(Enumerable.Range(1, 2 * Each).Select(i => (long)i), entries.Select(entry => entry.Sequence));
        Assert.Empty(ChainCheck.Of(entries));
    }

    /// <summary>Another process that writes without a pause keeps the logbook locked for longer
    /// than one wait, but for the blink between two transactions, which SQLite's waiting
    /// (https://sqlite.org/c3ref/busy_timeout.html) does not see.</summary>
    [Fact]
    public async Task Who_waits_for_one_that_gets_on_waits_on()
    {
        using var shelf = new Shelf();
        using var logbook = shelf.Open();
        var held = new TaskCompletionSource();
        var busy = Task.Factory.StartNew(() => WriteSlowly(shelf.File, held), TaskCreationOptions.LongRunning);
        await held.Task;
        var written = logbook.Write("heron", new Noted("waited", null));
        await busy;
        Assert.True(written.IsGood, string.Join('\n', written.Faults));
        Assert.Single(logbook.Read("heron"));
    }

    private static void WriteSlowly(string file, TaskCompletionSource held)
    {
        using var other = new SqliteConnection($"Data Source={file};Pooling=False");
        other.Open();
        for (var turn = 0; turn < 2; turn++)
        {
            using var transaction = other.BeginTransaction(deferred: false);
            held.TrySetResult();
            Thread.Sleep(TimeSpan.FromSeconds(3.5));
            other.Run($"CREATE TABLE Turn{turn} (Taken TEXT)");
            transaction.Commit();
        }
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
