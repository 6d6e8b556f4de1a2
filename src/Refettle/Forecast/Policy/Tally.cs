namespace Refettle.Forecast.Policy;

/// <summary>What all futures came to.</summary>
internal sealed class Tally(int futures, int activities, int lags, int watched)
{
    private readonly Lock _adding = new();

    /// <summary>When each future was finished; <see cref="OpenTimes.Never"/> or more when it was not.</summary>
    public int[] Finishes { get; } = new int[futures];

    /// <summary>For each watched activity and future, when something that waits for it started; the
    /// greatest number when nothing does.</summary>
    public int[][] NeededBy { get; } = [.. Enumerable.Range(0, watched).Select(_ => new int[futures])];

    /// <summary>Over all futures.</summary>
    public Counts Counts { get; } = new(activities, lags);

    public void Add(Counts counts)
    {
        lock (_adding)
            Counts.Add(counts);
    }

    /// <summary>Records when the first of those that wait for a watched activity started.</summary>
    public void Watch(int watch, int future, FutureRun run, (int Activity, int Least)[] waiting)
    {
        var needed = int.MaxValue;
        foreach (var (activity, least) in waiting)
            needed = Math.Min(needed, run.Starts[activity] - least);
        NeededBy[watch][future] = needed;
    }
}

/// <summary>Counts of one thread, or of all.</summary>
internal sealed class Counts(int activities, int lags)
{
    /// <summary>In how many futures each activity, by its number in the course, lay on the chain that decided the finish.</summary>
    public long[] Deciding { get; } = new long[activities];

    /// <summary>In how many futures each lag's latest end was missed.</summary>
    public long[] TooLate { get; } = new long[lags];

    /// <summary>In how many futures each activity, by its number in the course, was the first that found no windows any more.</summary>
    public long[] Stranded { get; } = new long[activities];

    /// <summary>Adds one played future.</summary>
    public void Add(Course course, FutureRun run)
    {
        var (last, latest) = (-1, -1);
        for (var i = 0; i < course.Count; i++)
        {
            if (run.Finishes[i] > latest)
                (last, latest) = (i, run.Finishes[i]);
        }

        if (latest >= OpenTimes.Never)
            Stranded[Array.FindIndex(run.Finishes, finish => finish >= OpenTimes.Never)]++;
        for (; last >= 0; last = run.Cause[last])
            Deciding[last]++;
        foreach (var (activity, arc) in course.Closing)
        {
            var from = arc.FromStart ? run.Starts[arc.Before] : run.Finishes[arc.Before];
            if (from < OpenTimes.Never && run.Starts[activity] > (long)from + arc.Most)
                TooLate[arc.Lag]++;
        }
    }

    public void Add(Counts other)
    {
        for (var i = 0; i < Deciding.Length; i++)
            Deciding[i] += other.Deciding[i];
        for (var i = 0; i < Stranded.Length; i++)
            Stranded[i] += other.Stranded[i];
        for (var i = 0; i < TooLate.Length; i++)
            TooLate[i] += other.TooLate[i];
    }
}

/// <summary>One future in full, in the project's order.</summary>
/// <param name="Missed">Windows that did not come about, as (resource, start).</param>
internal sealed record PlayedFuture(
    ValueList<int> Durations, ValueList<int> Starts, ValueList<int> Finishes, ValueList<(int Resource, int Start)> Missed);
