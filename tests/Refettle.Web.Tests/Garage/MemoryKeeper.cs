using System.Text.Json;
using Refettle.Web.Garage;

namespace Refettle.Web.Tests.Garage;

/// <summary>What a browser keeps, for tests; two tabs of one browser share it.</summary>
internal sealed class MemoryKeeper : IKeeper
{
    private readonly Dictionary<(string, string, long), BrowserEntry> _entries = [];
    private readonly Dictionary<string, object?> _kept = [];

    public Task<IReadOnlyList<KeptEntry>> EntriesAsync(string car) =>
        Task.FromResult<IReadOnlyList<KeptEntry>>([.. _entries.Values.Where(entry => entry.Car == car)
            .OrderBy(entry => entry.Device, StringComparer.Ordinal).ThenBy(entry => entry.Sequence)
            .Select(entry => new KeptEntry(JsonSerializer.Deserialize<Entry>(entry.Text, ExchangeJson.Options)!, entry.Sent))]);

    public Task<bool> AddAsync(BrowserEntry entry) => Task.FromResult(_entries.TryAdd((entry.Car, entry.Device, entry.Sequence), entry));

    public Task KeepAsync(IReadOnlyList<BrowserEntry> entries)
    {
        foreach (var entry in entries)
            _entries[(entry.Car, entry.Device, entry.Sequence)] = entry;
        return Task.CompletedTask;
    }

    public Task<T?> GetAsync<T>(string key) => Task.FromResult(_kept.TryGetValue(key, out var value) ? (T?)value : default);

    public Task PutAsync<T>(string key, T value)
    {
        _kept[key] = value;
        return Task.CompletedTask;
    }

    public Task WatchNetworkAsync(Func<Task> back) => Task.CompletedTask;
}
