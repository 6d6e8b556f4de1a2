namespace Refettle.Timeline.Scheduling;

/// <summary>Brings a schedule near to the one known before without finishing after a given time.</summary>
internal sealed class NearKnown(ReplanQuestion question, Builder builder, int until, Random random)
{
    private readonly int _count = builder.Network.Count;
    private readonly long[] _keys = new long[builder.Network.Count];
    private readonly int[] _starts = new int[builder.Network.Count];
    private Schedule _best = new([], []);
    private (int Days, int Moves) _cost;

    public static int DaysMoved(ReplanQuestion question, Schedule schedule) =>
        Enumerable.Range(0, schedule.Starts.Count)
            .Sum(i => question.Known[i] is { } known ? Math.Abs(DayOf(schedule.Starts[i], question.Day) - DayOf(known, question.Day)) : 0);

    /// <summary>Latest starts that meet the finish, from the schedule pushed to the right, say how
    /// early each must start; nothing has to start earlier than that or than before. Built in the order of the
    /// latest starts all are met again.</summary>
    public Schedule Run(Schedule early, int tries, CancellationToken cancel)
    {
        (_best, _cost) = (early, Cost(early));
        for (var i = 0; i < _count; i++)
            _keys[i] = early.Finishes[i];
        var latest = new int[_count];
        if (!builder.Backwards(_keys, until, latest))
            latest = [.. early.Starts];
        var order = latest;
        for (var t = 0; t < tries && _cost.Moves > 0 && !cancel.IsCancellationRequested; t++)
        {
            for (var i = 0; i < _count; i++)
                _keys[i] = 4L * order[i];
            if (t > 0)
                TakeBackOne();
            if (Build(latest))
                order = [.. _best.Starts];
            if (t == 0 && Build(releases: [.. question.Known.Select(known => known ?? -WorkTime.Never)]))
                order = [.. _best.Starts];
        }

        return _best;
    }

    /// <summary>Builds with everything held to its start before, or to its latest one.</summary>
    private bool Build(int[] releases)
    {
        if (!builder.ForwardsFrom(_keys, [.. releases.Select((latest, i) => Math.Min(latest, question.Known[i] ?? -WorkTime.Never))],
            _starts))
            return false;
        var schedule = builder.ToSchedule(_starts);
        var cost = Cost(schedule);
        if (schedule.Makespan > until || cost.CompareTo(_cost) > 0)
            return false;
        (_best, _cost) = (schedule, cost);
        return true;
    }

    /// <summary>Puts one that has moved where it was, and makes those around it follow.</summary>
    private void TakeBackOne()
    {
        var place = random.Next(_count);
        for (var k = 0; k < _count; k++)
        {
            var i = (place + k) % _count;
            if (question.Known[i] is not { } known || known == _best.Starts[i])
                continue;
            _keys[i] = 4L * known - random.Next(3);
            return;
        }
    }

    private (int Days, int Moves) Cost(Schedule schedule) =>
        (DaysMoved(question, schedule),
            Enumerable.Range(0, _count).Count(i => question.Known[i] is { } known && known != schedule.Starts[i]));

    private static int DayOf(int time, int day) => (int)Math.Floor((double)time / day);
}
