using Refettle.Timeline;
using Refettle.Timeline.Scheduling;

namespace Refettle.Solvers.Scheduling;

/// <summary>The earliest finish found so far and the bound proven, shared by all who look at the same time.</summary>
/// <param name="better">Told of every better schedule, one at a time.</param>
internal sealed class BestFinish(Builder builder, int bound, Action better)
{
    private const int MostKept = 50;

    private readonly Lock _lock = new();
    private readonly Queue<int[]> _equals = new();

    /// <summary>Of equals the latest; null until there is one.</summary>
    public int[]? Starts { get; private set; }

    /// <summary><see cref="WorkTime.Never"/> until there is a schedule.</summary>
    public int Makespan { get; private set; } = WorkTime.Never;

    /// <summary>No schedule finishes before.</summary>
    public int Bound { get; private set; } = bound;

    /// <summary>No schedule finishes earlier than the best.</summary>
    public bool IsProven => Makespan <= Bound;

    public void Keep(int[] starts)
    {
        var makespan = builder.Makespan(starts);
        lock (_lock)
        {
            if (makespan > Makespan)
                return;
            var isBetter = makespan < Makespan;
            if (isBetter)
                _equals.Clear();
            else if (_equals.Count == MostKept)
                _equals.Dequeue();
            (Starts, Makespan) = ([.. starts], makespan);
            _equals.Enqueue(Starts);
            if (isBetter)
                better();
        }
    }

    /// <summary>One of the latest that finish as early as the best, each in its turn; null until there is one.</summary>
    public int[]? OneOfEquals()
    {
        lock (_lock)
        {
            if (_equals.TryDequeue(out var starts))
                _equals.Enqueue(starts);
            return starts;
        }
    }

    /// <summary>Takes note of a proof.</summary>
    public void Raise(int proven)
    {
        lock (_lock)
            Bound = Math.Max(Bound, Math.Min(proven, Makespan));
    }
}
