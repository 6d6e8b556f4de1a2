namespace Refettle;

/// <summary>Which jobs the timeline is made for.</summary>
public static class ChosenJobs
{
    /// <summary>The scope that the owner chose, and what must be done either way; without a choice all that must be or is wanted. Done ones
    /// and bare possibilities are left out.</summary>
    public static ValueList<Job> Of(Car car) => car.Jobs.Where(job => !car.JobsDone.Contains(job.Id))
        .Where(job => job.Wish == Wish.Must || (car.Scope is { } scope ? scope.Contains(job.Id) : job.Wish == Wish.Want)).ToValueList();

    /// <summary>All their goals, with further ones.</summary>
    public static ValueList<Fact> Goals(ValueList<Job> jobs, IEnumerable<Fact> further) =>
        jobs.SelectMany(job => job.Goals).Concat(further).Distinct().ToValueList();
}
