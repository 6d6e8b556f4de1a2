namespace Refettle.Logbook;

/// <summary>Whether a job, or what the owner has for the jobs, may be written into a car's log.</summary>
internal static class JobCheck
{
    private const decimal MostMoney = 10_000_000;
    private const decimal MostDays = 3_660;

    public static IEnumerable<Fault> Known(Car car, string job)
    {
        if (car.Jobs.All(known => known.Id != job))
            yield return new($"job {job}", "there is no such job",
                NearNames.Ask(job, car.Jobs.Select(known => known.Id), "refettle job list shows them."));
    }

    public static IEnumerable<Fault> Done(Car car, JobDone done)
    {
        if (car.JobsDone.Contains(done.Job))
            yield return new($"job {done.Job}", "it is done already", "To undo it, strike its entry.");
        if (done.Took is { Value: < 0 or > Minutes.Max })
            yield return new("minutes", $"{done.Took.Value.Value} min", $"Give 0 to {Minutes.Max} min.");
        foreach (var fault in Known(car, done.Job))
            yield return fault;
    }

    public static IEnumerable<Fault> Entered(Car car, Job job) =>
        Named(job).Concat(Figures(job)).Concat(Worth(job)).Concat(Goals(car, job)).Concat(With(car, job));

    public static IEnumerable<Fault> Set(Car car, Means means)
    {
        if (means.By is null && car.Calendar.Handover is { } handover)
            yield return new("means", $"no day, while {DayWords.Moment(handover.By)} is to be met",
                "Say another day, or first that there is no date to meet: refettle meet none.");
        if (means.Budget is { Amount: < 0 or > MostMoney } budget)
            yield return new("means", $"a budget of {budget}", $"Give 0 to {MostMoney}.");
        if (means.Hours is { Value: < 0 or > Minutes.Max } hours)
            yield return new("means", $"{hours} of work", $"Give 0 to {Minutes.Max / 60:0} h.");
        if (means.PerPoint is { Amount: <= 0 or > MostMoney } rate)
            yield return new("means", $"a point is worth {rate}", $"Give more than 0, up to {MostMoney}.");
    }

    private static IEnumerable<Fault> Named(Job job)
    {
        if (!Identifier.IsValid(job.Id))
            yield return new("job", $"\"{job.Id}\" is not an identifier",
                "Use small letters, digits, - _ and ., beginning with a letter or digit.");
        if (string.IsNullOrWhiteSpace(job.Name))
            yield return new($"job {job.Id}", "it has no name", "Say in a few words what is to be done.");
    }

    private static IEnumerable<Fault> Figures(Job job)
    {
        if (job.Work.Value is < 0 or > Minutes.Max)
            yield return new($"job {job.Id}", $"{job.Work.Value} min of work", $"Give 0 to {Minutes.Max} min.");
        if (job.Parts.Amount is < 0 or > MostMoney)
            yield return new($"job {job.Id}", $"parts for {job.Parts}", $"Give 0 to {MostMoney}.");
        foreach (var wait
            in job.Waits.Where(wait => wait.Days is < 0 or > MostDays || wait.MostDays < wait.Days || wait.MostDays > MostDays))
            yield return new($"job {job.Id}",
                $"a wait of {wait.Days:0.##} days{(wait.MostDays is { } most ? $", {most:0.##} at worst" : "")}",
                $"Give 0 to {MostDays} days, the worst not below the expected.");
    }

    private static IEnumerable<Fault> Worth(Job job)
    {
        if (job.Worth is { } worth
            && (worth.Least < 0 || worth.Likely < worth.Least || worth.Most < worth.Likely || worth.Most > MostMoney))
            yield return new($"job {job.Id}", $"a worth of {worth.Least}, {worth.Likely}, {worth.Most}",
                $"Give least, likely and most in this order, 0 to {MostMoney}.");
        if (job is { Wish: not Wish.Must, Worth: null or { Most: 0 } })
            yield return new($"job {job.Id}", "nothing is said of its worth, so it will not be chosen",
                "Give it a worth, or make it a must.")
            { Severity = Severity.Note };
    }

    private static IEnumerable<Fault> Goals(Car car, Job job)
    {
        var known = Pruning.Named(car.Structure).ToHashSet();
        foreach (var goal in job.Goals.Where(goal => !Things.Exists(goal, known)))
            yield return new($"job {job.Id}", $"its goal {goal} names what the car does not have",
                NearNames.Ask(goal.Subject, known.Select(thing => thing.Id), "Look the name up in the list of the car."));
        foreach (var part in car.Structure.Parts
            .Where(part => part.Fixed && job.Goals.Any(goal => goal.Subject == part.Id && goal.Kind is FactKind.Off or FactKind.Free)))
            yield return new($"job {job.Id}", $"{part.Name} is fixed: it never comes off", "Ask for what has to come off it.");
        var stances = car.Structure.States.Where(state => state.IsStance && job.Goals.Contains(Fact.State(state.Id)))
            .Select(state => state.Id).ToList();
        if (stances.Count > 0)
            yield return new($"job {job.Id}", $"{string.Join(" and ", stances)} is a stance: it does not last",
                "Name what has to be off, open or within reach; the plan finds the stances.");
    }

    private static IEnumerable<Fault> With(Car car, Job job)
    {
        foreach (var other in job.With.Where(other => other == job.Id || car.Jobs.All(known => known.Id != other)))
            yield return new($"job {job.Id}",
                other == job.Id ? "it is to be done with itself" : $"it is to be done with {other}, which is no job",
                NearNames.Ask(other, car.Jobs.Select(known => known.Id), "Enter that job first."));
    }
}
