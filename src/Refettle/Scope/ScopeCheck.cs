using Refettle.Access;

namespace Refettle.Scope;

/// <summary>Adds a scope up again from the car's own figures, and replays its plan; it shares nothing
/// with the planner but the words.</summary>
public static class ScopeCheck
{
    private const string Report = "This is a fault of the program: please report it.";

    /// <summary>Everything that is wrong with an answer; empty for a sound one.</summary>
    public static ValueList<Fault> Of(Car car, ScopeAnswer answer)
    {
        if (answer.Status == PlanStatus.Impossible)
            return [];
        var counted = car with { Settings = car.Settings with { PerHour = answer.Question.PerHour } };
        var jobs = car.Jobs.Where(job => answer.Chosen.Contains(job.Id)).ToList();
        return [.. Set(car, answer, jobs), .. Opening(counted, answer, jobs), .. Sums(counted, answer, jobs), .. Limits(answer, jobs)];
    }

    private static IEnumerable<Fault> Set(Car car, ScopeAnswer answer, List<Job> jobs)
    {
        var open = car.Jobs.Where(job => !car.JobsDone.Contains(job.Id)).ToList();
        foreach (var job
            in open.Where(job => (job.Wish == Wish.Must || answer.Question.Also.Contains(job.Id)) && !answer.Chosen.Contains(job.Id)))
            yield return Wrong(job.Id, "it must be in and is not");
        foreach (var job in jobs.Where(job => car.JobsDone.Contains(job.Id) || answer.Question.Leave.Contains(job.Id)))
            yield return Wrong(job.Id, "it is in, though done or to be left alone");
        foreach (var job
            in jobs.Where(job => job.With.Any(other => open.Any(known => known.Id == other) && !answer.Chosen.Contains(other))))
            yield return Wrong(job.Id, $"it is in without {string.Join(", ", job.With.Except(answer.Chosen))}");
        if (answer.Chosen.Distinct().Count() != jobs.Count || jobs.Count != answer.Chosen.Count
            || jobs.Count + answer.Left.Count != open.Count)
            yield return Wrong("all", "jobs are missing, unknown or counted twice");
    }

    private static IEnumerable<Fault> Opening(Car car, ScopeAnswer answer, List<Job> jobs)
    {
        foreach (var goal in jobs.SelectMany(job => job.Goals).Where(goal => !answer.Plan!.Question.Goals.Contains(goal)).Distinct())
            yield return Wrong($"goal {goal}", "the plan does not reach it");
        foreach (var fault in PlanCheck.Of(car, answer.Plan!))
            yield return fault;
    }

    private static IEnumerable<Fault> Sums(Car car, ScopeAnswer answer, List<Job> jobs)
    {
        var (sum, perHour) = (answer.Sum, answer.Question.PerHour.Amount);
        var ways = answer.Plan!.Steps.DistinctBy(step => (step.Fact, step.Way)).SelectMany(step => Ways(car.Structure, step)).ToList();
        var money = ways.Sum(way => way.Spends.Amount + way.Destroys.Sum(part => Price(car, part))) + jobs.Sum(job => job.Parts.Amount);
        var opening = answer.Plan.Steps.Sum(step => step.Cost.Open.Value + step.Cost.Close.Value);
        var unique = answer.Plan.Steps.Sum(step => step.Cost.Unique.Value);
        var worth = jobs.Sum(job => Worth(job, answer.Question));
        if (sum.Money.Amount != money || sum.Opening.Value != opening || sum.Unique.Value != unique
            || sum.Work.Value != jobs.Sum(job => job.Work.Value) || sum.Worth != worth)
            yield return Wrong("sum", $"it says {sum}, and is worth {worth}, money {money}, opening {opening} min, unique {unique} min");
        var gain = worth - money - ((opening + unique + jobs.Sum(job => job.Work.Value)) * perHour / 60);
        if (gain != answer.Gain || answer.Bound < gain)
            yield return Wrong("gain", $"it says {answer.Gain} of at most {answer.Bound}, and is {gain}");
    }

    private static IEnumerable<Fault> Limits(ScopeAnswer answer, List<Job> jobs)
    {
        var question = answer.Question;
        if (question.Hours is { } hours && answer.Sum.Time > hours)
            yield return Wrong("hours", $"{answer.Sum.Time} of {hours}");
        if (question.Until?.Spells is { } spells && answer.Sum.Time > spells)
            yield return Wrong("day", $"{answer.Sum.Time} of {spells} in spells");
        if (question.Budget is { } budget && answer.Sum.Money.Amount > budget.Amount)
            yield return Wrong("budget", $"{answer.Sum.Money} of {budget}");
        foreach (var job in jobs.Where(job => question.Until is { } until && job.Waits.Sum(wait => wait.Days) > until.Days))
            yield return Wrong(job.Id, "its waits last beyond the day");
    }

    private static IEnumerable<Way> Ways(Structure structure, Step step) =>
        structure.Joints.Where(joint => step.Fact == Fact.Open(joint.Id)).SelectMany(joint => joint.Ways)
            .Concat(structure.States.Where(state => step.Fact == Fact.State(state.Id)).SelectMany(state => state.Ways))
            .Where(way => way.Id == step.Way);

    private static decimal Price(Car car, string part) =>
        (car.Structure.Parts.First(known => known.Id == part).Price ?? car.Settings.UnknownPrice).Amount;

    private static decimal Worth(Job job, ScopeQuestion question)
    {
        var isMust = job.Wish == Wish.Must || question.Also.Contains(job.Id);
        var figure = job.Worth is null ? 0 : job.Wish == Wish.Maybe && !isMust ? job.Worth.Least : job.Worth.Likely;
        return job.Worth?.In == WorthUnit.Points ? figure * question.PerPoint!.Value.Amount : figure;
    }

    private static Fault Wrong(string place, string found) => new($"scope {place}", found, Report);
}
