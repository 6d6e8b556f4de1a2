namespace Refettle.Timeline.Scheduling;

/// <summary>What is known about the schedule that was asked for.</summary>
public enum ScheduleStatus
{
    /// <summary>None found, and not shown to be impossible.</summary>
    Unknown,

    /// <summary>A valid schedule; a better one may exist.</summary>
    Feasible,

    /// <summary>A valid schedule, and none is better: in its finish and in every aim.</summary>
    Optimal,

    /// <summary>No schedule keeps all that was set.</summary>
    Impossible,
}

/// <summary>A schedule, and how sure it is that none is better.</summary>
/// <param name="Bound">No schedule finishes earlier than this.</param>
/// <param name="Costs">Of the schedule: one for each of the question's aims.</param>
/// <param name="Clash">When impossible: conditions of which no one can be kept together with the
/// others; leave out any one of them and the rest can be kept. Empty when the search for them was cut short, or when it is
/// impossible without any condition.</param>
public sealed record ScheduleAnswer(ScheduleStatus Status, Schedule? Schedule, int Bound, ValueList<long> Costs, ValueList<Condition> Clash)
{
    /// <summary>The finish is proven the earliest, whatever is known about the aims.</summary>
    public bool IsFinishProven => Schedule is not null && Schedule.Makespan <= Bound;
}

/// <summary>What somebody has set and could give up, unlike what follows from the work itself.</summary>
public enum ConditionKind
{
    /// <summary>An activity's latest finish.</summary>
    LatestFinish,

    /// <summary>An activity's settled start.</summary>
    FixedStart,

    /// <summary>A lag's upper end.</summary>
    MostLag,
}

/// <summary>One condition.</summary>
/// <param name="Index">Place of the activity, or of the lag, in the project.</param>
public readonly record struct Condition(ConditionKind Kind, int Index);
