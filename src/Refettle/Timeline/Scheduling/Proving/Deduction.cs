namespace Refettle.Timeline.Scheduling.Proving;

/// <summary>Draws from what is being tried all that follows.</summary>
internal sealed class Deduction
{
    private readonly Lags _lags;
    private int _followed;

    /// <param name="earliest">The earliest starts to look at, 0 or more.</param>
    /// <param name="latest">The latest, none before the earliest.</param>
    public Deduction(Network network, int[] earliest, int[] latest)
    {
        Bounds = new(earliest, latest);
        Clauses = new(Bounds);
        _lags = new(Bounds, [.. network.Arcs.Where(arc => arc.From != arc.To)
            .Select(arc => (arc.From, arc.To, arc.StartToStart(network.Duration)))]);
        Profile = new(Bounds, network.Duration, network.Capacity, [.. Enumerable.Range(0, network.Count)
            .Select(i => network.Capacity.Select((_, r) => network.Need(i, r)).ToArray())]);
    }

    public Bounds Bounds { get; }

    public Clauses Clauses { get; }

    public Profile Profile { get; }

    /// <summary>Draws what is cheap to draw first.</summary>
    /// <returns>False at a conflict.</returns>
    public bool Follow()
    {
        while (true)
        {
            while (_followed < Bounds.Count)
            {
                var step = Bounds.StepAt(_followed++);
                if (!_lags.Follow(step.Side, step.After) || !Clauses.Follow(step.Side, step.Before, step.After))
                    return false;
            }

            if (Profile.IsUpToDate)
                return true;
            if (!Profile.Follow())
                return false;
        }
    }

    /// <param name="level">Below the present one: of it all is kept, of those above nothing.</param>
    public void TakeBack(int level)
    {
        var first = Bounds.FirstAbove(level);
        Profile.TakeBack(first);
        Bounds.TakeBack(level);
        _followed = Math.Min(_followed, first);
    }
}
