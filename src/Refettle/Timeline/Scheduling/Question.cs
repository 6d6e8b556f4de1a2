namespace Refettle.Timeline.Scheduling;

/// <summary>When is everything to be done? As early a last finish as can be, then the aims in their order.</summary>
/// <param name="Later">What to make small among schedules that finish equally early, the first before the second.</param>
/// <param name="Known">A schedule to begin from, as the one shown before; null without. It need not be valid any more.</param>
public sealed record ScheduleQuestion(Project Project, ValueList<Aim> Later, Schedule? Known = null)
{
    public ScheduleQuestion(Project project)
        : this(project, [])
    {
    }
}

/// <summary>How long a scheduler may look, and what makes its answer come again.</summary>
/// <param name="Time">By the clock.</param>
/// <param name="Seed">The same seed and <paramref name="Work"/> give the same answer, where the time does not end first.</param>
/// <param name="Work">Effort that does not depend on the machine's speed, in the solver's own seconds; null leaves only the time, and
/// an answer that may differ from run to run.</param>
/// <param name="Workers">Threads.</param>
public sealed record ScheduleLimits(TimeSpan Time, int Seed = 1, double? Work = null, int Workers = 2);

/// <summary>Finds schedules.</summary>
public interface IScheduler
{
    /// <summary>Looks for the best schedule until it is proven, the limits are reached, or it is told to
    /// stop: then the best so far counts.</summary>
    /// <param name="progress">Told of every better answer.</param>
    ScheduleAnswer Solve(
        ScheduleQuestion question, ScheduleLimits limits, IProgress<ScheduleAnswer>? progress = null, CancellationToken cancel = default);
}
