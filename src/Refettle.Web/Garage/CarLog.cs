using System.Security.Cryptography;
using Refettle.Logbook;

namespace Refettle.Web.Garage;

/// <summary>One car's logbook as this browser has it: read from what is kept here, written here first, then made one with the server's.</summary>
public sealed class CarLog(string car, string device, ServerApi server, IKeeper keeper, TimeProvider clock) : IDisposable
{
    private readonly LogWriter _writer = new(device, clock, RandomNumberGenerator.Create());
    private readonly SemaphoreSlim _turn = new(1);
    private readonly List<Entry> _arrived = [];
    private readonly HashSet<Guid> _known = [];
    private readonly Dictionary<Guid, Entry> _waiting = [];
    private readonly Dictionary<Guid, Result<Happening?>> _read = [];

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
    public Result<Happening?> Read(Entry entry) => _read.TryGetValue(entry.Id, out var known) ? known : _read[entry.Id] = Happenings.Decode(entry);

    /// <summary>Takes up what is kept in this browser. Own entries are taken first, so that what other devices wrote counts as known
    /// to the next one: it may name more than it has to, never less.</summary>
    public async Task LoadAsync()
    {
        foreach (var kept in (await keeper.EntriesAsync(car)).OrderBy(kept => kept.Entry.Device != device))
            Take(kept.Entry, kept.Sent);
    }

    /// <summary>Writes what happened; when this returns it is kept in this browser.</summary>
    public async Task<Entry> WriteAsync(Happening happening)
    {
        await _turn.WaitAsync();
        try
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
        }
        finally
        {
            _turn.Release();
        }
    }

    /// <summary>Sends what waits and fetches what is new; true when entries came.</summary>
    public async Task<bool> SyncAsync()
    {
        await _turn.WaitAsync();
        try
        {
            return await SendAsync() && await FetchAsync();
        }
        finally
        {
            _turn.Release();
        }
    }

    public void Dispose() => _turn.Dispose();

    private async Task<bool> SendAsync()
    {
        if (_waiting.Count == 0)
            return true;
        var batch = _waiting.Values.OrderBy(entry => entry.Device, StringComparer.Ordinal).ThenBy(entry => entry.Sequence).ToValueList();
        var reply = await server.SendAsync(car, batch);
        Note(reply);
        if (!reply.IsGood)
            return false;
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
        if (!reply.IsGood)
            return false;
        var came = reply.Value.Entries.Where(entry => !_known.Contains(entry.Id)).ToArray();
        await keeper.KeepAsync([.. came.Select(entry => BrowserEntry.Of(entry, sent: true))]);
        await keeper.PutAsync(LastKey, reply.Value.Last);
        foreach (var entry in came)
            Take(entry, sent: true);
        return came.Length > 0;
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
