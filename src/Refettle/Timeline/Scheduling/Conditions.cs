namespace Refettle.Timeline.Scheduling;

/// <summary>What was set for a project and could be given up.</summary>
public static class Conditions
{
    /// <summary>All of them, of what is still ahead.</summary>
    public static IEnumerable<Condition> Of(Project project)
    {
        foreach (var (i, activity) in project.Activities.Index().Where(entry => entry.Item.Done is null))
        {
            if (activity.LatestFinish is not null)
                yield return new(ConditionKind.LatestFinish, i);
            if (activity.FixedStart is not null)
                yield return new(ConditionKind.FixedStart, i);
        }

        foreach (var (k, lag) in project.Lags.Index()
            .Where(entry => entry.Item.Most is not null && project.Activities[entry.Item.After].Done is null))
            yield return new(ConditionKind.MostLag, k);
    }

    /// <summary>The project with these conditions only.</summary>
    public static Project Keep(Project project, IReadOnlyCollection<Condition> conditions)
    {
        var kept = conditions.ToHashSet();
        return project with
        {
            Activities = project.Activities.Select((activity, i) => activity with
            {
                LatestFinish = kept.Contains(new(ConditionKind.LatestFinish, i)) ? activity.LatestFinish : null,
                FixedStart = kept.Contains(new(ConditionKind.FixedStart, i)) ? activity.FixedStart : null,
            }).ToValueList(),
            Lags = project.Lags.Select((lag, k) => kept.Contains(new(ConditionKind.MostLag, k)) ? lag : lag with { Most = null })
                .ToValueList(),
        };
    }
}
