namespace Refettle.Ledger;

/// <summary>Which job something belongs to: the one that names it among its goals, when there is only one.</summary>
internal sealed class Belonging(Car car)
{
    private const string Job = "job ";

    private readonly ILookup<string, string> _jobs = car.Jobs.SelectMany(job => job.Goals.Select(goal => (goal.Subject, job.Id))).Distinct()
        .ToLookup(pair => pair.Subject, pair => pair.Id);

    /// <param name="about"><c>job x</c>, a thing such as <c>part x</c>, a fact; null for nothing.</param>
    public string? To(string? about)
    {
        if (about is null)
            return null;
        if (about.StartsWith(Job, StringComparison.Ordinal))
            return about[Job.Length..];
        return ToOne(_jobs[Fact.TryParse(about, out var fact) ? fact.Subject : about[(about.IndexOf(' ') + 1)..]]);
    }

    /// <summary>The job of the positions that take a part number.</summary>
    public string? OfNumber(string number) =>
        ToOne(car.Numbers.Where(position => position.Number == number).Select(position => To(position.Thing)));

    /// <summary>The one that all of them are; null when they differ or there are none.</summary>
    public static string? ToOne(IEnumerable<string?> jobs) => jobs.Distinct().Take(2).ToList() is [var only] ? only : null;
}
