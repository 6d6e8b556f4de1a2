using Google.OrTools.Sat;
using Google.OrTools.Util;
using Refettle.Timeline.Scheduling;

namespace Refettle.Solvers.Scheduling;

/// <summary>A time that only runs while something is open. On it work has no pauses, so a long
/// evening-by-evening task is one stretch.</summary>
internal sealed class Axis(WorkTime time)
{
    public WorkTime Time => time;

    /// <summary>Ties a moment by the clock to the worked time it stands for: clock = worked + every closed stretch before it.</summary>
    /// <param name="atEnd">The moment is the end of a minute worked, not the beginning of one.</param>
    public void Tie(CpModel model, LinearExpr worked, LinearExpr clock, int workedFrom, int workedTo, bool atEnd)
    {
        var shift = atEnd ? 1 : 0;
        var (first, last) = (WindowOf(workedFrom - shift), WindowOf(workedTo - shift));
        var before = time.Worked(time[first].Start);
        var sum = LinearExpr.Sum([worked, LinearExpr.Constant(time[first].Start - before)]);
        for (var k = first + 1; k <= last; k++)
        {
            before += time[k - 1].End - time[k - 1].Start;
            var isReached = model.NewBoolVar("");
            model.Add(worked >= before + shift).OnlyEnforceIf(isReached);
            model.Add(clock >= time[k].Start + shift).OnlyEnforceIf(isReached);
            model.Add(worked < before + shift).OnlyEnforceIf(isReached.Not());
            model.Add(clock <= time[k - 1].End - 1 + shift).OnlyEnforceIf(isReached.Not());
            sum += (time[k].Start - time[k - 1].End) * isReached;
        }

        model.Add(clock == sum);
    }

    /// <summary>Starts on this axis, from one to another, after which a duration fits into one window.</summary>
    public Domain Unbroken(WorkTime windows, int duration, int from, int to)
    {
        var stretches = new List<long[]>();
        for (var k = 0; k < windows.Count; k++)
        {
            var (first, last) = (Math.Max(from, windows[k].Start), Math.Min(to, windows[k].End - duration));
            if (first <= last)
                stretches.Add([time.Worked(first), time.Worked(last)]);
        }

        return Domain.FromIntervals([.. stretches]);
    }

    private int WindowOf(int worked)
    {
        var (low, high) = (0, time.Count - 1);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            if (time.Worked(time[middle].Start) <= worked)
                low = middle;
            else
                high = middle - 1;
        }

        return low;
    }
}
