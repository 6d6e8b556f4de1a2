using CsCheck;
using Refettle.Logbook;
using Refettle.Web.Garage;

namespace Refettle.Web.Tests.Garage;

public sealed class CarLogTests
{
    private readonly MemoryKeeper _browser = new();
    private readonly FaultyServer _server = new();

    [Fact]
    public async Task What_is_written_is_kept_before_it_is_sent_and_waits_until_the_server_has_it()
    {
        _server.Next = () => FaultyServer.Fate.RequestLost;
        using var log = await OpenAsync();
        var entry = await log.WriteAsync(new Noted("one", null));
        Assert.False(await log.SyncAsync());
        Assert.Equal((1, false), (log.Waiting, log.IsReached));

        using var reloaded = await OpenAsync();
        Assert.True(reloaded.IsWaiting(entry.Id));
        _server.Next = () => FaultyServer.Fate.Arrives;
        await reloaded.SyncAsync();
        Assert.Equal(0, reloaded.Waiting);
        Assert.Equal([entry], _server.Entries);
    }

    [Fact]
    public async Task Writing_does_not_wait_for_a_network_that_is_silent()
    {
        var silence = new TaskCompletionSource();
        _server.Held = silence.Task;
        using var log = await OpenAsync();
        var first = await log.WriteAsync(new Noted("one", null));
        var sync = log.SyncAsync();
        var second = await log.WriteAsync(new Noted("two", null)).WaitAsync(TimeSpan.FromMinutes(1));
        Assert.False(sync.IsCompleted);
        using var reloaded = await OpenAsync();
        Assert.Equal([first, second], reloaded.Entries);

        silence.SetResult();
        await sync;
        Assert.Equal((1, true), (log.Waiting, log.IsWaiting(second.Id)));
        await log.SyncAsync();
        Assert.Equal([first, second], _server.Entries);
        Assert.Empty(ChainCheck.Of(_server.Entries));
    }

    [Fact]
    public async Task What_is_marked_while_the_network_is_silent_is_sent_together()
    {
        var (silence, requests) = (new TaskCompletionSource(), 0);
        (_server.Held, _server.Next) = (silence.Task, () =>
        {
            requests++;
            return FaultyServer.Fate.Arrives;
        }
        );
        using var log = await OpenAsync();
        var syncs = new List<Task>();
        for (var i = 0; i < 20; i++)
        {
            await log.WriteAsync(new Noted($"mark {i}", null));
            syncs.Add(log.SyncAsync());
        }

        silence.SetResult();
        await Task.WhenAll(syncs);
        Assert.Equal((0, 20), (log.Waiting, _server.Entries.Count));
        // Each of the two syncs sends and fetches: the one that was on its way, and one for all that came after.
        Assert.Equal(4, requests);
    }

    [Fact]
    public async Task An_answer_that_was_lost_doubles_nothing()
    {
        _server.Next = () => FaultyServer.Fate.AnswerLost;
        using var log = await OpenAsync();
        await log.WriteAsync(new Noted("one", null));
        await log.SyncAsync();
        Assert.Equal(1, log.Waiting);
        _server.Next = () => FaultyServer.Fate.Arrives;
        await log.SyncAsync();
        Assert.Single(_server.Entries);
        Assert.Single(log.Entries);
    }

    [Fact]
    public async Task What_the_server_refuses_stays_here_and_its_fault_is_shown()
    {
        _server.Next = () => FaultyServer.Fate.Refused;
        using var log = await OpenAsync();
        await log.WriteAsync(new Noted("one", null));
        await log.SyncAsync();
        Assert.Equal((1, true), (log.Waiting, log.IsReached));
        Assert.Contains("it is refused", Assert.Single(log.Faults).Found);
    }

    [Fact]
    public async Task Two_tabs_of_one_browser_write_one_chain()
    {
        using var first = await OpenAsync();
        using var second = await OpenAsync();
        await first.WriteAsync(new Noted("a", null));
        await second.WriteAsync(new Noted("b", null));
        await first.WriteAsync(new Noted("c", null));
        await first.SyncAsync();
        Assert.Equal([1L, 2L, 3L], _server.Entries.Select(entry => entry.Sequence));
        Assert.Empty(ChainCheck.Of(_server.Entries));
    }

    [Fact]
    public async Task A_server_that_lost_its_log_is_read_from_the_beginning()
    {
        using var log = await OpenAsync();
        foreach (var word in new[] { "a", "b", "c" })
            await log.WriteAsync(new Noted(word, null));
        await log.SyncAsync();
        _server.Forget();
        using var other = new CarLog("car", "other", _server.Api, new MemoryKeeper(), TimeProvider.System);
        await other.WriteAsync(new Noted("d", null));
        await other.SyncAsync();
        Assert.True(await log.SyncAsync());
        Assert.Equal(4, log.Entries.Count);
    }

    /// <summary>Three browsers write and synchronise in any order while requests and answers are lost at random.</summary>
    [Fact]
    public void Whatever_the_network_does_nothing_is_lost_or_doubled_and_all_come_to_the_same_car() =>
        Gen.Select(Gen.Int[0, 2].Array[1, 40], Gen.Int[0, 5].Array[200]).Sample((turns, fates) =>
        {
            var server = new FaultyServer();
            var logs = new[] { "a", "b",
                "c" }.Select(device => new CarLog("car", device, server.Api, new MemoryKeeper(), TimeProvider.System)).ToArray();
            var fate = 0;
            server.Next = () => fates[fate++ % fates.Length] switch
            {
                0 => FaultyServer.Fate.RequestLost,
                1 => FaultyServer.Fate.AnswerLost,
                _ => FaultyServer.Fate.Arrives
            };
            foreach (var turn in turns)
            {
                logs[turn].WriteAsync(new Noted($"{turn}", null)).GetAwaiter().GetResult();
                logs[turn].SyncAsync().GetAwaiter().GetResult();
            }

            server.Next = () => FaultyServer.Fate.Arrives;
            foreach (var log in logs.Concat(logs))
                log.SyncAsync().GetAwaiter().GetResult();
            Assert.Equal(turns.Length, server.Entries.Count);
            Assert.All(logs, log => Assert.Equal(0, log.Waiting));
            var lines = logs.Select(log => CarHistory.Of("car", log.Entries).Lines.Select(line => line.Entry).ToValueList()).ToArray();
            Assert.All(lines, line => Assert.Equal(lines[0], line));
            Assert.Empty(ChainCheck.Of(server.Entries));
        }, iter: 30);

    private async Task<CarLog> OpenAsync()
    {
        var log = new CarLog("car", "phone", _server.Api, _browser, TimeProvider.System);
        await log.LoadAsync();
        return log;
    }
}
