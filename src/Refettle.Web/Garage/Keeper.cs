using System.Text.Json;
using Microsoft.JSInterop;

namespace Refettle.Web.Garage;

/// <summary>An entry as it is handed to this browser to keep.</summary>
/// <param name="Sent">The server has it.</param>
/// <param name="Text">The entry as JSON.</param>
public sealed record BrowserEntry(string Car, string Device, long Sequence, bool Sent, string Text)
{
    public static BrowserEntry Of(Entry entry, bool sent) =>
        new(entry.Car, entry.Device, entry.Sequence, sent, JsonSerializer.Serialize(entry, ExchangeJson.Options));
}

/// <summary>An entry that this browser kept.</summary>
/// <param name="Sent">The server has it.</param>
public readonly record struct KeptEntry(Entry Entry, bool Sent);

/// <summary>What this browser keeps over a reload.</summary>
public interface IKeeper
{
    Task<IReadOnlyList<KeptEntry>> EntriesAsync(string car);

    /// <summary>Keeps an entry of this browser's own chain; false when another tab has taken its place in the chain.</summary>
    Task<bool> AddAsync(BrowserEntry entry);

    Task KeepAsync(IReadOnlyList<BrowserEntry> entries);

    Task<T?> GetAsync<T>(string key);

    Task PutAsync<T>(string key, T value);

    /// <summary>Calls when the network comes back or the page is looked at again.</summary>
    Task WatchNetworkAsync(Func<Task> back);
}

/// <summary>Keeps in the browser's IndexedDB.</summary>
public sealed class BrowserKeeper(IJSRuntime browser) : IKeeper
{
    private readonly Lazy<Task<IJSObjectReference>> _module =
        new(() => browser.InvokeAsync<IJSObjectReference>("import", "./js/kept.js").AsTask());

    private Func<Task>? _back;

    public async Task<IReadOnlyList<KeptEntry>> EntriesAsync(string car) =>
        EntryBytes.Read(await (await _module.Value).InvokeAsync<byte[]>("entryBytes", car));

    public async Task<bool> AddAsync(BrowserEntry entry) => await (await _module.Value).InvokeAsync<bool>("add", entry);

    public async Task KeepAsync(IReadOnlyList<BrowserEntry> entries) => await (await _module.Value).InvokeVoidAsync("keep", entries);

    public async Task<T?> GetAsync<T>(string key) =>
        await (await _module.Value).InvokeAsync<string?>("get", key) is { } text ? Read<T>(text) : default;

    public async Task PutAsync<T>(string key, T value) =>
        await (await _module.Value).InvokeVoidAsync("put", key, JsonSerializer.Serialize(value, ExchangeJson.Options));

    public async Task WatchNetworkAsync(Func<Task> back)
    {
        _back = back;
        await (await _module.Value).InvokeVoidAsync("watchNetwork", DotNetObjectReference.Create(this));
    }

    [JSInvokable]
    public Task NetworkChanged() => _back?.Invoke() ?? Task.CompletedTask;

    /// <summary>What an older version of the page kept may not be readable any more; it is then asked anew.</summary>
    private static T? Read<T>(string text)
    {
        try
        {
            return JsonSerializer.Deserialize<T>(text, ExchangeJson.Options);
        }
        catch (JsonException)
        {
            return default;
        }
    }
}
