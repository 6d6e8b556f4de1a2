namespace Refettle.Web.Garage;

/// <summary>Pictures on their way to the server. What breaks off goes on where it stopped.</summary>
public sealed class PhotoOutbox(ServerApi server, IPhotoKeeper keeper) : IDisposable
{
    private const int Piece = 256 * 1024;
    private readonly SemaphoreSlim _turn = new(1);

    /// <summary>How many pictures are kept in this browser and not yet known to be with the server.</summary>
    public int Waiting { get; private set; }

    /// <summary>What the server had against a picture.</summary>
    public ValueList<Fault> Faults { get; private set; } = [];

    /// <summary>Keeps a picture here; durable when this returns.</summary>
    public async Task KeepAsync(string hash, byte[] bytes, bool isSmall)
    {
        await keeper.KeepAsync(hash, bytes, isSmall);
        Waiting++;
    }

    /// <summary>Looks up what waits from before, so that nothing is said to be in the logbook that is not.</summary>
    public async Task LoadAsync() => Waiting = (await keeper.WaitingAsync()).Count;

    /// <summary>Sends what waits, as far as the network lets it.</summary>
    public async Task SendAsync()
    {
        await _turn.WaitAsync();
        try
        {
            var waiting = await keeper.WaitingAsync();
            (Waiting, Faults) = (waiting.Count, []);
            foreach (var hash in waiting)
            {
                if (!await SendAsync(hash))
                    return;
            }
        }
        finally
        {
            _turn.Release();
        }
    }

    public void Dispose() => _turn.Dispose();

    /// <summary>False when the server cannot be reached: then the rest waits too. A picture that the
    /// server refuses holds up no other.</summary>
    private async Task<bool> SendAsync(string hash)
    {
        if (await keeper.BytesAsync(hash) is not { Length: > 0 } bytes)
            return true;
        var reply = await server.PhotoProgressAsync(hash);
        for (long from = -1; reply.IsGood && !reply.Value.Kept && reply.Value.Received != from;)
        {
            from = reply.Value.Received < bytes.Length ? reply.Value.Received : 0;
            reply = await server.SendPhotoAsync(hash, from, bytes.Length,
                bytes.AsSpan((int)from, (int)Math.Min(Piece, bytes.Length - from)).ToArray());
        }

        if (reply.Reached && !reply.IsGood)
            Faults = [.. Faults, .. reply.Faults];
        if (!reply.IsGood || !reply.Value.Kept)
            return reply.Reached;
        await keeper.SentAsync(hash);
        Waiting--;
        return true;
    }
}
