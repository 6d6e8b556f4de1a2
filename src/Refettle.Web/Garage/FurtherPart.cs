using System.Runtime.InteropServices.JavaScript;
using Microsoft.AspNetCore.Components.WebAssembly.Services;

namespace Refettle.Web.Garage;

/// <summary>The part of the program that the first page does without (Refettle.Further.csproj): fetched
/// behind it, once, and before any other page. Until it is here no method that runs may name one of its types, nor any class
/// that is used have a field of one.</summary>
public sealed class FurtherPart(LazyAssemblyLoader loader, TimeProvider clock)
{
    private static readonly string[] Files = ["Refettle.Further.wasm", "MathNet.Numerics.wasm"];
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan LongPause = TimeSpan.FromSeconds(15);
    private Task<bool>? _fetched;
    private bool _isAhead;

    /// <summary>What to tell whoever wanted it in vain.</summary>
    public static Fault Missing { get; } = new("this page",
        "its part of the program was not fetched before, and the server does not give it",
        "Try again when the server can be reached, or load the page again.");

    /// <summary>Fetches it unless it is here; what failed is tried anew.</summary>
    /// <returns>Whether it is here now.</returns>
    public Task<bool> FetchAsync() =>
        _fetched is null or { IsCompletedSuccessfully: true, Result: false } ? _fetched = TryAsync() : _fetched;

    /// <summary>Fetches it while nobody waits for it, a moment later: what the first page shows goes first. Where the network is away it
    /// is tried again until it is here.</summary>
    public void FetchAhead()
    {
        if (!_isAhead)
            _ = FetchLaterAsync();
        _isAhead = true;
    }

    private async Task FetchLaterAsync()
    {
        await Task.Delay(Pause, clock);
        while (!await FetchAsync())
            await Task.Delay(LongPause, clock);
    }

    private async Task<bool> TryAsync()
    {
        try
        {
            await loader.LoadAssembliesAsync(Files);
            return true;
        }
        catch (Exception problem) when (problem is JSException or BadImageFormatException or IOException)
        {
            return false;
        }
    }
}
