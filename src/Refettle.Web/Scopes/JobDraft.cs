using Refettle.Web.Edits;

namespace Refettle.Web.Scopes;

/// <summary>A job while it is typed.</summary>
public sealed class JobDraft(Job job)
{
    public string Name { get; set; } = job.Name;

    public Wish Wish { get; set; } = job.Wish;

    public ValueList<Fact> Goals { get; private set; } = job.Goals;

    public string Least { get; set; } = job.Worth is { } worth && worth.Least < worth.Likely ? Figures.Text(worth.Least) : "";

    public string Likely { get; set; } = Figures.Text(job.Worth?.Likely);

    public string Most { get; set; } = job.Worth is { } worth && worth.Most > worth.Likely ? Figures.Text(worth.Most) : "";

    public WorthUnit In { get; set; } = job.Worth?.In ?? WorthUnit.Money;

    /// <summary>Its own work in hours.</summary>
    public string Hours { get; set; } = job.Work == Minutes.Zero ? "" : Figures.Text(job.Work.Value / 60);

    public string Parts { get; set; } = job.Parts.Amount == 0 ? "" : Figures.Text(job.Parts.Amount);

    /// <summary>Days of a wait that is to be added.</summary>
    public string Days { get; set; } = "";

    public WaitKind WaitKind { get; set; }

    public string WaitsFor { get; set; } = "";

    public ValueList<JobWait> Waits { get; private set; } = job.Waits;

    /// <summary>A job that nothing is known of yet.</summary>
    public static Job Blank { get; } = new() { Id = "new", Name = "" };

    public void Open(Fact goal) => Goals = Goals.Append(goal).Distinct().ToValueList();

    public void Leave(Fact goal) => Goals = Goals.Where(other => other != goal).ToValueList();

    public void Drop(JobWait wait) => Waits = Waits.Where(other => other != wait).ToValueList();

    /// <summary>The job as typed, under an identifier; what was not typed stays as it was.</summary>
    public Result<Job> ToJob(string id)
    {
        var figures = new Figures($"job {id}");
        var typed = job with
        {
            Id = id,
            Name = Name.Trim(),
            Wish = Wish,
            Goals = Goals,
            Worth = WorthAsTyped(figures),
            Work = figures.Maybe("work", Hours) is { } hours ? new(hours * 60) : Minutes.Zero,
            Parts = new(figures.Maybe("parts", Parts) ?? 0),
            Waits = figures.Maybe("days", Days) is { } days ? [.. Waits, new(WaitKind, WaitsFor.Trim(), days, null, Origin.User)] : Waits,
            Origin = Origin.User,
        };
        return figures.Faults.Count > 0 ? Result<Job>.Bad(figures.Faults) : Result<Job>.Good(typed);
    }

    private Worth? WorthAsTyped(Figures figures)
    {
        var (least, likely, most) =
            (figures.Maybe("least worth", Least), figures.Maybe("worth", Likely), figures.Maybe("most worth", Most));
        return (likely ?? least ?? most) is { } figure ? new(least ?? figure, figure, most ?? figure, In, Origin.User) : null;
    }
}
