namespace Refettle.Web.Garage;

/// <summary>When to look for what is new: every few seconds, when the network comes back, and when the page is looked at again.</summary>
public sealed class Lookout(IKeeper keeper, TimeProvider clock) : IDisposable
{
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(15);
    private readonly CancellationTokenSource _end = new();
    private bool _isBegun;

    /// <summary>Begins; a second time it does nothing.</summary>
    public async Task BeginAsync(Func<Task> look)
    {
        if (_isBegun)
            return;
        _isBegun = true;
        await keeper.WatchNetworkAsync(look);
        _ = LookAgainAsync(look, _end.Token);
    }

    public void Dispose()
    {
        _end.Cancel();
        _end.Dispose();
    }

    private async Task LookAgainAsync(Func<Task> look, CancellationToken end)
    {
        using var timer = new PeriodicTimer(Pause, clock);
        try
        {
            while (await timer.WaitForNextTickAsync(end))
                await look();
        }
        catch (OperationCanceledException)
        {
            return;
        }
    }
}
