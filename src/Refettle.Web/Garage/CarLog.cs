using System.Security.Cryptography;
using Refettle.Logbook;

namespace Refettle.Web.Garage;

/// <summary>One car's logbook as this browser has it: read from what is kept here, written here first,
/// then made one with the server's.</summary>
public sealed class CarLog(string car, string device, ServerApi server, IKeeper keeper, TimeProvider clock) : IDisposable
{
    private readonly LogWriter _writer = new(device, clock, RandomNumberGenerator.Create());
    private readonly SemaphoreSlim _turn = new(1);
    private readonly SemaphoreSlim _syncing = new(1);
    private readonly List<Entry> _arrived = [];
    private readonly HashSet<Guid> _known = [];
    private readonly Dictionary<Guid, Entry> _waiting = [];
    private readonly Dictionary<Guid, Result<Happening?>> _read = [];

    /// <summary>How often a sync was asked for, and which of these are answered: the last that had been asked when one began.</summary>
    private (int Asked, int Answered) _syncs;

    /// <summary>This browser's name in the entries that it writes.</summary>
    public string Device => device;

    private string LastKey => $"last:{car}";

    /// <summary>All entries, in the order in which they came to be known here.</summary>
    public IReadOnlyList<Entry> Entries => _arrived;

    /// <summary>Entries that are kept in this browser and not yet known to be in the server's logbook.</summary>
    public int Waiting => _waiting.Count;

    public bool IsWaiting(Guid entry) => _waiting.ContainsKey(entry);

    /// <summary>The server answered last time it was asked.</summary>
    public bool IsReached { get; private set; }

    /// <summary>What the server had against the last thing it was sent or asked.</summary>
    public ValueList<Fault> Faults { get; private set; } = [];

    /// <summary>What an entry tells, read once: a whole car is half a megabyte of text, too much to read anew for each mark.</summary>
    public Result<Happening?> Read(Entry entry) =>
        _read.TryGetValue(entry.Id, out var known) ? known : _read[entry.Id] = Happenings.Decode(entry);

    /// <summary>Takes up what is kept in this browser. Own entries are taken first, so that what other devices wrote counts as known
    /// to the next one: it may name more than it has to, never less.</summary>
    public async Task LoadAsync()
    {
        foreach (var kept in (await keeper.EntriesAsync(car)).OrderBy(kept => kept.Entry.Device != device))
            Take(kept.Entry, kept.Sent);
    }

    /// <summary>Writes what happened; when this returns it is kept in this browser. It waits for no
    /// network: a request may hang for long.</summary>
    public Task<Entry> WriteAsync(Happening happening) => InTurnAsync(async () =>
    {
        while (true)
        {
            var entry = _writer.Next(car, LogEnd.Of(device, _arrived), happening);
            if (await keeper.AddAsync(BrowserEntry.Of(entry, sent: false)))
            {
                Take(entry, sent: false);
                return entry;
            }

            await LoadAsync();
        }
    });

    /// <summary>Sends what waits and fetches what is new; true when entries came. Marks made while the network is
    /// silent are sent together: what began after one asked serves for it too.</summary>
    public async Task<bool> SyncAsync()
    {
        var asked = ++_syncs.Asked;
        await _syncing.WaitAsync();
        try
        {
            if (_syncs.Answered >= asked)
                return false;
            _syncs.Answered = _syncs.Asked;
            return await SendAsync() && await FetchAsync();
        }
        finally
        {
            _syncing.Release();
        }
    }

    public void Dispose()
    {
        _turn.Dispose();
        _syncing.Dispose();
    }

    private async Task<bool> SendAsync()
    {
        var batch = await InTurnAsync(() => Task.FromResult(_waiting.Values.OrderBy(entry => entry.Device, StringComparer.Ordinal)
            .ThenBy(entry => entry.Sequence).ToValueList()));
        if (batch.Count == 0)
            return true;
        var reply = await server.SendAsync(car, batch);
        Note(reply);
        return reply.IsGood && await InTurnAsync(() => SentAsync(batch));
    }

    private async Task<bool> SentAsync(ValueList<Entry> batch)
    {
        await keeper.KeepAsync([.. batch.Select(entry => BrowserEntry.Of(entry, sent: true))]);
        foreach (var entry in batch)
            _waiting.Remove(entry.Id);
        return true;
    }

    private async Task<bool> FetchAsync()
    {
        var after = _arrived.Count == 0 ? 0 : await keeper.GetAsync<long>(LastKey);
        var reply = await server.EntriesAsync(car, after);
        if (reply.IsGood && reply.Value.Last < after)
            reply = await server.EntriesAsync(car, 0);
        Note(reply);
        return reply.IsGood && await InTurnAsync(() => CameAsync(reply.Value));
    }

    /// <returns>True when any of them is new.</returns>
    private async Task<bool> CameAsync(EntryPage page)
    {
        var came = page.Entries.Where(entry => !_known.Contains(entry.Id)).ToArray();
        await keeper.KeepAsync([.. came.Select(entry => BrowserEntry.Of(entry, sent: true))]);
        await keeper.PutAsync(LastKey, page.Last);
        foreach (var entry in came)
            Take(entry, sent: true);
        return came.Length > 0;
    }

    /// <summary>One after the other, what changes the log.</summary>
    private async Task<T> InTurnAsync<T>(Func<Task<T>> work)
    {
        await _turn.WaitAsync();
        try
        {
            return await work();
        }
        finally
        {
            _turn.Release();
        }
    }

    private void Note<T>(Reply<T> reply) => (IsReached, Faults) = (reply.Reached, reply.Reached ? reply.Faults : []);

    private void Take(Entry entry, bool sent)
    {
        if (!_known.Add(entry.Id))
            return;
        _arrived.Add(entry);
        if (!sent)
            _waiting[entry.Id] = entry;
    }
}
