namespace Refettle.Timeline.Scheduling;

/// <summary>Makes the aims of a schedule smaller without finishing later: by moving activities in the order that it is built in, and by
/// delaying what is better late.</summary>
internal sealed class Polish(Builder builder, ValueList<Aim> aims, Random random)
{
    private readonly int _count = builder.Network.Count;
    private readonly int[] _starts = new int[builder.Network.Count];

    /// <summary>The best schedule found with so many built.</summary>
    public Schedule Run(Schedule known, int tries, CancellationToken cancel = default)
    {
        var (best, cost) = (known, Cost(known));
        var keys = new long[_count];
        Improve(Delayed(known), known.Makespan, ref best, ref cost);
        for (var t = 0; t < tries && cost.Any(each => each > 0) && !cancel.IsCancellationRequested; t++)
        {
            for (var i = 0; i < _count; i++)
                keys[i] = 4L * best.Starts[i];
            Move(keys, best);
            if (builder.Forwards(keys, _starts))
                Improve(Delayed(builder.ToSchedule(_starts)), known.Makespan, ref best, ref cost);
        }

        return best;
    }

    private void Improve(Schedule schedule, int makespan, ref Schedule best, ref long[] cost)
    {
        if (schedule.Makespan > makespan)
            return;
        var found = Cost(schedule);
        if (found.AsSpan().SequenceCompareTo(cost) >= 0)
            return;
        (best, cost) = (schedule, found);
    }

    private long[] Cost(Schedule schedule) => [.. aims.Select(aim => aim.Cost(schedule))];

    /// <summary>Puts one activity next to another, or a few that follow each other in front of an earlier one.</summary>
    private void Move(long[] keys, Schedule schedule)
    {
        var target = random.Next(_count);
        var moved = Companion(target);
        for (var more = random.Next(4); more >= 0; more--)
        {
            keys[moved] = 4L * schedule.Starts[target] + (random.Next(2) == 0 ? -1 : 1);
            var after = builder.Network.Cycles.Successors[moved];
            if (after.Length == 0)
                return;
            moved = after[random.Next(after.Length)];
        }
    }

    /// <summary>Where set-ups count, one with the same set-up; else any.</summary>
    private int Companion(int target)
    {
        var any = random.Next(_count);
        if (aims.OfType<Aim.FewChanges>().FirstOrDefault() is not { } few || few.Setups[target] < 0)
            return any;
        for (var t = 0; t < 20 && few.Setups[any] != few.Setups[target]; t++)
            any = random.Next(_count);
        return any;
    }

    private Schedule Delayed(Schedule schedule) =>
        aims.OfType<Aim.LateStarts>().FirstOrDefault() is { } late
            ? builder.ToSchedule(builder.Delay([.. schedule.Starts], late.Weights))
            : schedule;
}
