using Refettle.Timeline.Scheduling;

namespace Refettle.Timeline;

/// <summary>What is there on too few days, or ends too soon, where there is no timeline.</summary>
internal static class ShortDays
{
    private static readonly ScheduleLimits _each = new(TimeSpan.FromSeconds(1));

    /// <summary>With it always there, there would be a timeline. Nothing where there is one as it is: then none was found
    /// in time, and nothing is short.</summary>
    public static ValueList<string> Of(Projection projection, CancellationToken cancel)
    {
        var (resources, users) = (projection.Unpressed.Resources, projection.Unpressed.Activities);
        if (Works(projection.Unpressed, cancel))
            return [];
        return (from place in Enumerable.Range(0, resources.Count)
                let user = Enumerable.Range(0, users.Count).LastOrDefault(i => users[i].Demands[place] > 0, -1)
                where place != Projection.You && resources[place].Open is not null && user >= 0
                    && Works(Always(projection.Unpressed, place), cancel)
                select $"too few days for {ResourceBook.Words(resources[place].Id)}, which is needed for \"{projection.Tasks[user].Says}\"")
                .ToValueList();
    }

    private static bool Works(Project project, CancellationToken cancel) =>
        new FirstScheduler().Solve(new(project), _each, null, cancel).Schedule is not null;

    private static Project Always(Project project, int place) =>
        project with { Resources = project.Resources.Select((one, i) => i == place ? one with { Open = null } : one).ToValueList() };
}
