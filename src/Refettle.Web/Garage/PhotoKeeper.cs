using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace Refettle.Web.Garage;

/// <summary>A chosen picture in the sizes that are kept, upright.</summary>
/// <param name="Grey">Brightness of a smaller version, by which sharpness is judged.</param>
public sealed record PreparedPhoto(int Width, int Height, byte[] Picture, byte[] Small, byte[] Grey, int GreyWidth, int GreyHeight);

/// <summary>Pictures in this browser.</summary>
public interface IPhotoKeeper
{
    /// <summary>The picture chosen in a file field; null when there is none or the browser cannot show it.</summary>
    Task<PreparedPhoto?> PrepareAsync(ElementReference input);

    /// <summary>The file as it was chosen.</summary>
    Task<byte[]?> OriginalAsync(ElementReference input);

    Task ClearAsync(ElementReference input);

    /// <summary>Keeps a picture over a reload; durable when this returns.</summary>
    Task KeepAsync(string hash, byte[] bytes, bool isSmall);

    /// <summary>Hashes of the pictures that the server does not have yet.</summary>
    Task<IReadOnlyList<string>> WaitingAsync();

    Task<byte[]?> BytesAsync(string hash);

    /// <summary>The server has it.</summary>
    Task SentAsync(string hash);

    /// <summary>Where the page finds a picture that is kept here; null when it is not.</summary>
    Task<string?> AddressAsync(string hash);
}

/// <summary>Keeps in the browser's IndexedDB, and makes pictures smaller on a canvas.</summary>
public sealed class BrowserPhotoKeeper(IJSRuntime browser) : IPhotoKeeper
{
    /// <summary>Pixels of the longer side: enough to read a part number in a corner.</summary>
    private const int Longest = 2000;

    private const int LongestSmall = 320;

    private readonly Lazy<Task<IJSObjectReference>> _module =
        new(() => browser.InvokeAsync<IJSObjectReference>("import", "./js/photo.js").AsTask());

    public async Task<PreparedPhoto?> PrepareAsync(ElementReference input) =>
        await (await _module.Value).InvokeAsync<PreparedPhoto?>("prepare", input, Longest, LongestSmall, Imaging.Sharpness.Longest);

    public async Task<byte[]?> OriginalAsync(ElementReference input) => await (await _module.Value).InvokeAsync<byte[]?>("original", input);

    public async Task ClearAsync(ElementReference input) => await (await _module.Value).InvokeVoidAsync("clear", input);

    public async Task KeepAsync(string hash, byte[] bytes, bool isSmall) =>
        await (await _module.Value).InvokeVoidAsync("keep", hash, bytes, isSmall);

    public async Task<IReadOnlyList<string>> WaitingAsync() => await (await _module.Value).InvokeAsync<string[]>("waiting");

    public async Task<byte[]?> BytesAsync(string hash) => await (await _module.Value).InvokeAsync<byte[]?>("bytes", hash);

    public async Task SentAsync(string hash) => await (await _module.Value).InvokeVoidAsync("sent", hash);

    public async Task<string?> AddressAsync(string hash) => await (await _module.Value).InvokeAsync<string?>("address", hash);
}
