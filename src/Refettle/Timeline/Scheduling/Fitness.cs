namespace Refettle.Timeline.Scheduling;

/// <summary>How good a schedule is: when it ends, and of those that end together how late what is in it ends. Where more is done
/// early on, an earlier end is nearer.</summary>
/// <param name="Makespan">The last finish; <see cref="WorkTime.Never"/> when there is no schedule.</param>
/// <param name="Lateness">The squares of all finishes, added up.</param>
internal readonly record struct Fitness(int Makespan, long Lateness) : IComparable<Fitness>
{
    public static readonly Fitness None = new(WorkTime.Never, long.MaxValue);

    public bool IsNone => Makespan >= WorkTime.Never;

    public int CompareTo(Fitness other) =>
        Makespan != other.Makespan ? Makespan.CompareTo(other.Makespan) : Lateness.CompareTo(other.Lateness);
}
