namespace Refettle.Timeline.Scheduling;

/// <summary>Something to make small in a schedule, after its finish.</summary>
public abstract record Aim
{
    private Aim()
    {
    }

    /// <summary>What a schedule costs by this aim: 0 or more, less is better.</summary>
    public abstract long Cost(Schedule schedule);

    /// <summary>Starts as late as can be, as money is best spent late: counts, for each activity, its weight times the time from its start
    /// to the last finish.</summary>
    /// <param name="Weights">One for each activity, 0 or more.</param>
    public sealed record LateStarts(ValueList<int> Weights) : Aim
    {
        public override long Cost(Schedule schedule) =>
            Enumerable.Range(0, Weights.Count).Sum(i => (long)Weights[i] * (schedule.Makespan - schedule.Starts[i]));
    }

    /// <summary>Few changes of set-up, as of the car's stance: counts, along the activities that
    /// need one in order of their starts, how often it differs from the one before.</summary>
    /// <param name="Setups">What each activity needs, 0 or more; below 0 when it works with any.</param>
    public sealed record FewChanges(ValueList<int> Setups) : Aim
    {
        public override long Cost(Schedule schedule)
        {
            var (changes, last) = (0, -1);
            foreach (var together in Enumerable.Range(0, Setups.Count).Where(i => Setups[i] >= 0)
                .GroupBy(i => schedule.Starts[i], i => Setups[i]).OrderBy(group => group.Key))
            {
                // Of those that start at the same moment, the ones for which nothing changes count as the first.
                var kinds = together.Distinct().OrderBy(kind => kind == last ? -1 : kind).ToList();
                changes += kinds.Count(kind => kind != last) - (last < 0 ? 1 : 0);
                last = kinds[^1];
            }

            return changes;
        }
    }

    /// <summary>As little moved as can be: counts, for each activity, its weight times the days by which its start moves from the
    /// day it was on before.</summary>
    /// <param name="Starts">Where each started before.</param>
    /// <param name="Weights">What moving it costs: 0 when it does not matter.</param>
    /// <param name="Day">Length of a day; days are counted from time 0.</param>
    public sealed record SameDays(ValueList<int> Starts, ValueList<int> Weights, int Day) : Aim
    {
        public override long Cost(Schedule schedule) =>
            Enumerable.Range(0, Starts.Count).Sum(i => (long)Weights[i] * Math.Abs(DayOf(schedule.Starts[i]) - DayOf(Starts[i])));

        private long DayOf(int time) => Math.DivRem(time, Day) is var (day, rest) && rest < 0 ? day - 1 : day;
    }
}
