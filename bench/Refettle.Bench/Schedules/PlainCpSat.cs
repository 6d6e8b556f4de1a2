using System.Diagnostics;
using Refettle.Solvers.Scheduling;
using Refettle.Timeline;
using Refettle.Timeline.Scheduling;

namespace Refettle.Bench.Schedules;

/// <summary>The same project given to CP-SAT without a schedule to begin from, and without anything else that the schedulers do.</summary>
internal static class PlainCpSat
{
    /// <summary>Milliseconds to its first schedule, and to one that finishes until a time; null when that did not come.</summary>
    public static (int? Any, int? AsGood) TimesTo(Project project, int finish, double seconds)
    {
        var clock = Stopwatch.StartNew();
        (int? any, int? asGood) = (null, null);
        using var enough = new CancellationTokenSource();
        Run(project, null, seconds, schedule =>
        {
            any ??= (int)clock.ElapsedMilliseconds;
            if (schedule.Makespan > finish)
                return;
            asGood ??= (int)clock.ElapsedMilliseconds;
            enough.Cancel();
        }, enough.Token);
        return (any, asGood);
    }

    /// <summary>The best schedule after so many seconds.</summary>
    /// <param name="hint">Starts to begin from; null for none.</param>
    public static Schedule? Run(
        Project project, int[]? hint, double seconds, Action<Schedule>? better = null, CancellationToken cancel = default)
    {
        var builder = new Builder(Network.Of(project));
        if (builder.Earliest is not { } earliest || builder.Latest(builder.Horizon) is not { } latest)
            return null;
        var model = new ScheduleModel(builder.Network, earliest, latest, 0, builder.Horizon);
        model.Model.Minimize(model.Makespan);
        if (hint is not null)
            model.Timings.Hint(hint);
        var effort = new Effort(new(TimeSpan.FromSeconds(seconds)), TimeProvider.System, cancel);
        var (_, _, starts) = new ConstraintSearch(effort)
            .Run(model, seconds, null, better: found => better?.Invoke(builder.ToSchedule(found)));
        return starts is null ? null : builder.ToSchedule(starts);
    }
}
