namespace Refettle.Timeline.Scheduling.Proving;

/// <summary>What follows from one side for others: with each lag the earliest start of the one after, and the latest of
/// the one before.</summary>
internal sealed class Lags
{
    private readonly Bounds _bounds;
    private readonly (int Side, int Lag)[][] _from;

    /// <param name="lags">From start to start.</param>
    public Lags(Bounds bounds, IReadOnlyList<(int Before, int After, int Lag)> lags)
    {
        _bounds = bounds;
        var forwards = lags.Select(lag => (From: 2 * lag.Before, To: 2 * lag.After, lag.Lag));
        var backwards = lags.Select(lag => (From: (2 * lag.After) + 1, To: (2 * lag.Before) + 1, lag.Lag));
        var from = forwards.Concat(backwards).ToLookup(lag => lag.From, lag => (lag.To, lag.Lag));
        _from = [.. Enumerable.Range(0, bounds.Sides).Select(side => from[side].ToArray())];
    }

    /// <returns>False when something would have to be that cannot.</returns>
    public bool Follow(int side, int value)
    {
        foreach (var (other, lag) in _from[side])
        {
            if (_bounds[other] < value + lag && !_bounds.TrySet(new(other, value + lag), Reason.OfLag(side, lag)))
                return false;
        }

        return true;
    }
}
