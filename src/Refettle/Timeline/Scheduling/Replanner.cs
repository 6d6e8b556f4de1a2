namespace Refettle.Timeline.Scheduling;

/// <summary>Replans within the time of a keystroke. It first looks how early all can be finished, breeding from the order known before;
/// then it lets everything start where it started before, or as much earlier as that finish asks;
/// then it takes back single moves.</summary>
/// <param name="work">Activities placed altogether while looking: a measure of effort that does not depend on the machine.</param>
public sealed class Replanner(int work = 150_000)
{
    public ReplanAnswer Replan(ReplanQuestion question, int seed = 1, CancellationToken cancel = default)
    {
        var project = question.Project with
        {
            Activities = question.Project.Activities
                .Select(activity => activity with { Earliest = Math.Max(activity.Earliest, question.Now) }).ToValueList(),
        };
        if (project.Activities.Count == 0)
            return new(new([], []), 0, 0, []);
        var builder = new Builder(Network.Of(project));
        var bound = LowerBounds.Of(builder);
        var most = work / project.Activities.Count;
        if (Early(question, builder, bound, most, new Random(seed), cancel) is not { } early)
            return new(null, bound, 0, []);
        var ahead = Math.Max(0, early.Makespan - question.Now);
        var until = early.Makespan + (int)(question.Patience * ahead);
        var kept = new NearKnown(question, builder, until, new Random(seed)).Run(early, most / 3, cancel);
        var moved = Enumerable.Range(0, kept.Starts.Count).Where(i => question.Known[i] is { } known && known != kept.Starts[i])
            .ToValueList();
        return new(kept, bound, NearKnown.DaysMoved(question, kept), moved);
    }

    private static Schedule? Early(ReplanQuestion question, Builder builder, int bound, int most, Random random, CancellationToken cancel)
    {
        var first = new FirstSchedule(builder, random);
        first.From(question.Known);
        first.Run(most / 10, bound, cancel);
        if (first.Best is null)
            return null;
        builder.MostPutBack = builder.Network.Count;
        var search = new GeneticSearch(builder, first.Best, random, population: 12);
        search.Run(bound, most / 2, null, cancel);
        return builder.ToSchedule(search.Best);
    }
}
