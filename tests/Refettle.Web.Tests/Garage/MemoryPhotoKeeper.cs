using Microsoft.AspNetCore.Components;
using Refettle.Web.Garage;

namespace Refettle.Web.Tests.Garage;

/// <summary>Keeps pictures in memory, in place of a browser.</summary>
internal sealed class MemoryPhotoKeeper : IPhotoKeeper
{
    private readonly Dictionary<string, byte[]> _kept = [];
    private readonly HashSet<string> _sent = [];

    public PreparedPhoto? Prepared { get; set; }

    public Task<PreparedPhoto?> PrepareAsync(ElementReference input) => Task.FromResult(Prepared);

    public Task<byte[]?> OriginalAsync(ElementReference input) => Task.FromResult<byte[]?>(null);

    public Task ClearAsync(ElementReference input) => Task.CompletedTask;

    public Task KeepAsync(string hash, byte[] bytes, bool isSmall)
    {
        _kept[hash] = bytes;
        return Task.CompletedTask;
    }

    public Task<IReadOnlyList<string>> WaitingAsync() =>
        Task.FromResult<IReadOnlyList<string>>([.. _kept.Keys.Where(hash => !_sent.Contains(hash))]);

    public Task<byte[]?> BytesAsync(string hash) => Task.FromResult(_kept.GetValueOrDefault(hash));

    public Task SentAsync(string hash)
    {
        _sent.Add(hash);
        return Task.CompletedTask;
    }

    public Task<string?> AddressAsync(string hash) => Task.FromResult(_kept.ContainsKey(hash) ? $"blob:{hash}" : null);
}
