namespace Refettle.Scope;

/// <summary>Whether a question about the scope can be asked of a car.</summary>
public static class ScopeQuestionCheck
{
    /// <summary>All faults: no jobs, points without a rate, jobs that are not there or both in and left alone.</summary>
    public static ValueList<Fault> Of(Car car, ScopeQuestion question) =>
        Limits(question).Concat(Names(car, question)).Concat(Rates(car, question)).ToValueList();

    private static IEnumerable<Fault> Limits(ScopeQuestion question)
    {
        if (question.Budget is { Amount: < 0 } budget)
            yield return new("budget", $"it is {budget}", "Give 0 or more.");
        if (question.Hours is { Value: < 0 } hours)
            yield return new("hours", $"they are {hours.Value / 60:0.#}", "Give 0 or more.");
        if (question.Until is { Days: < 0 } or { Spells.Value: < 0 })
            yield return new("day", "it has passed", "Give a day to come.");
        if (question.PerHour.Amount < 1)
            yield return new("per-hour", $"an hour is worth {question.PerHour}",
                "Give 1 or more, so that of two ways the quicker is taken.");
    }

    private static IEnumerable<Fault> Names(Car car, ScopeQuestion question)
    {
        if (car.Jobs.Count == 0)
            yield return new("jobs", "there are none", "Think of some: refettle job add.");
        foreach (var job in question.Also.Concat(question.Leave).Distinct().Where(job => car.Jobs.All(known => known.Id != job)))
            yield return new($"job {job}", "there is no such job",
                NearNames.Ask(job, car.Jobs.Select(known => known.Id), "refettle job list shows them."));
        foreach (var job in question.Leave
            .Where(job => question.Also.Contains(job) || car.Jobs.Any(known => known.Id == job && known.Wish == Wish.Must)))
            yield return new($"job {job}", "it is to be in and to be left alone", "Take it out of one, or make it a want.");
    }

    private static IEnumerable<Fault> Rates(Car car, ScopeQuestion question)
    {
        if (question.PerPoint is { Amount: <= 0 } rate)
            yield return new("per-point", $"a point is worth {rate}", "Give more than 0.");
        if (question.PerPoint is null
            && car.Jobs.FirstOrDefault(job => job.Worth?.In == WorthUnit.Points && !car.JobsDone.Contains(job.Id)) is { } inPoints)
            yield return new($"job {inPoints.Id}", "its worth is in points, and what a point is worth is not said",
                "Say it: refettle means per-point=25.");
    }
}
