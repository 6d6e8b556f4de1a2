namespace Refettle.Scope;

/// <summary>The jobs that are still open, numbered, with what each brings and needs.</summary>
internal sealed class JobList
{
    private readonly ScopeQuestion _question;
    private readonly Dictionary<string, int> _number;

    public JobList(Car car, ScopeQuestion question)
    {
        _question = question;
        Jobs = [.. car.Jobs.Where(job => !car.JobsDone.Contains(job.Id))];
        _number = Enumerable.Range(0, Jobs.Length).ToDictionary(number => Jobs[number].Id);
        With = [.. Jobs.Select((_, number) => Together(number))];
    }

    public Job[] Jobs { get; }

    /// <summary>For each job, itself and all jobs without which it makes no sense.</summary>
    public int[][] With { get; }

    public int NumberOf(string job) => _number[job];

    public bool Knows(string job) => _number.ContainsKey(job);

    public bool IsMust(int job) => Jobs[job].Wish == Wish.Must || _question.Also.Contains(Jobs[job].Id);

    public bool IsLeft(int job) => _question.Leave.Contains(Jobs[job].Id);

    /// <summary>The day comes before its waits are over.</summary>
    public bool IsTooLong(int job) => _question.Until is { } until && DaysOf(job) > until.Days;

    public decimal DaysOf(int job) => Jobs[job].Waits.Sum(wait => wait.Days);

    /// <summary>What it brings, in the car's currency: the likely of its worth, for a maybe the least.</summary>
    public decimal WorthOf(int job)
    {
        var worth = Jobs[job].Worth;
        var figure = worth is null ? 0 : Jobs[job].Wish == Wish.Maybe && !IsMust(job) ? worth.Least : worth.Likely;
        return worth?.In == WorthUnit.Points ? figure * _question.PerPoint!.Value.Amount : figure;
    }

    /// <summary>The musts with all that they need.</summary>
    public int[] Musts() => Closed(Enumerable.Range(0, Jobs.Length).Where(IsMust));

    /// <summary>Some jobs with all that they need.</summary>
    public int[] Closed(IEnumerable<int> jobs) => [.. jobs.SelectMany(job => With[job]).Distinct().Order()];

    public ValueList<Fact> Goals(IEnumerable<int> jobs) => jobs.SelectMany(job => Jobs[job].Goals).Distinct().ToValueList();

    public ValueList<string> Names(IEnumerable<int> jobs) => jobs.Select(job => Jobs[job].Id).ToValueList();

    private int[] Together(int job)
    {
        var found = new List<int> { job };
        for (var next = 0; next < found.Count; next++)
            found.AddRange(Jobs[found[next]].With.Where(_number.ContainsKey).Select(NumberOf).Where(other => !found.Contains(other))
                .Distinct().ToList());
        return [.. found.Order()];
    }
}
