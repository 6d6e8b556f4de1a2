namespace Refettle.Logbook;

/// <summary>The jobs while a log is folded.</summary>
internal sealed class JobBook
{
    private readonly Dictionary<string, Job> _jobs = [];
    private readonly HashSet<string> _done = [];
    private ValueList<string>? _scope;
    private DateOnly? _handover;

    /// <summary>There is one day to meet: the one that was told last, with the handover or with these. While a handover is set,
    /// means that tell no day leave it.</summary>
    public Means Means { get; private set; } = Means.NoLimit;

    public ValueList<string> Done => _done.Order(StringComparer.Ordinal).ToValueList();

    public ValueList<string>? Scope => _scope?.Where(_jobs.ContainsKey).Order(StringComparer.Ordinal).ToValueList();

    /// <summary>Applies what is about jobs and what is set for them, or says why it does not fit; other happenings pass.</summary>
    public string? Apply(Happening happening)
    {
        switch (happening)
        {
            case JobEntered entered:
                _jobs[entered.Job.Id] = entered.Job;
                return null;
            case JobDropped dropped:
                _done.Remove(dropped.Job);
                return _jobs.Remove(dropped.Job) ? null : $"there is no job {dropped.Job}";
            case JobDone done:
                return !_jobs.ContainsKey(done.Job) ? $"there is no job {done.Job}" : _done.Add(done.Job) ? null : "it was done before";
            case MeansSet set:
                Means = set.Means with { By = set.Means.By ?? _handover };
                _handover = _handover is null ? null : Means.By;
                return null;
            case HandoverSet set:
                _handover = set.Handover?.By.Date.ToDateOnly();
                Means = Means with { By = _handover };
                return null;
            case ScopeChosen chosen:
                _scope = chosen.Jobs;
                return null;
            default:
                return null;
        }
    }

    /// <summary>All jobs in the order of their identifiers; what names a thing that the car does not
    /// have is left out and reported.</summary>
    public ValueList<Job> Jobs(Structure structure, List<Fault> faults)
    {
        if (_jobs.Count == 0)
            return [];
        var known = Pruning.Named(structure).ToHashSet();
        return _jobs.Values.OrderBy(job => job.Id, StringComparer.Ordinal).Select(job => Mended(job, known, faults)).ToValueList();
    }

    private Job Mended(Job job, HashSet<Thing> known, List<Fault> faults)
    {
        var unknown = job.Goals.Where(goal => !Things.Exists(goal, known)).ToList();
        faults.AddRange(unknown.Select(goal => new Fault($"job {job.Id}", $"its goal {goal} names what the car does not have",
            "It is left out until that is described.")));
        var alone = job.With.All(_jobs.ContainsKey);
        return unknown.Count == 0 && alone
            ? job
            : job with { Goals = job.Goals.Except(unknown).ToValueList(), With = job.With.Where(_jobs.ContainsKey).ToValueList() };
    }
}
