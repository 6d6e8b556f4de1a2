namespace Refettle.Timeline.Scheduling;

/// <summary>Gives a good schedule within milliseconds, without a native solver. It works on the
/// finish; the aims come as they come.</summary>
/// <param name="samples">Schedules built beyond the priority rules, at most; fewer for long projects.</param>
public sealed class FirstScheduler(int samples = 100) : IScheduler
{
    private const int ActivitiesPlacedAtMost = 2_400;

    public ScheduleAnswer Solve(
        ScheduleQuestion question, ScheduleLimits limits, IProgress<ScheduleAnswer>? progress = null, CancellationToken cancel = default)
    {
        if (question.Project.Activities.Count == 0)
            return new(ScheduleStatus.Optimal, new([], []), 0, question.Later.Select(_ => 0L).ToValueList(), []);
        var builder = new Builder(Network.Of(question.Project));
        var bound = LowerBounds.Of(builder);
        var first = new FirstSchedule(builder, new Random(limits.Seed));
        if (question.Known is { } known)
            first.From([.. known.Starts]);
        first.Run(Math.Min(samples, ActivitiesPlacedAtMost / question.Project.Activities.Count), bound, cancel);
        var answer = Answer(question, builder, first, bound);
        progress?.Report(answer);
        return answer;
    }

    private static ScheduleAnswer Answer(ScheduleQuestion question, Builder builder, FirstSchedule first, int bound)
    {
        if (first.Best is null)
            return new(builder.Earliest is null ? ScheduleStatus.Impossible : ScheduleStatus.Unknown, null, bound, [], []);
        var schedule = builder.ToSchedule(first.Best);
        var status = schedule.Makespan <= bound && question.Later.Count == 0 ? ScheduleStatus.Optimal : ScheduleStatus.Feasible;
        return new(status, schedule, bound, question.Later.Select(aim => aim.Cost(schedule)).ToValueList(), []);
    }
}
