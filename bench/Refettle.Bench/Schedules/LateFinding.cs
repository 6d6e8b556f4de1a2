using Refettle.Peers.Projects;
using Refettle.Timeline;
using Refettle.Timeline.Scheduling;

namespace Refettle.Bench.Schedules;

/// <summary>A project somewhere on its way, with something found that takes longer than planned.</summary>
internal sealed record LateFinding(ReplanQuestion Question, Schedule Known)
{
    /// <summary>Up to half of the project is done as planned; one of the next twenty tasks takes 100 to 600 minutes longer.</summary>
    public static LateFinding Make(int size, int seed)
    {
        var random = new Random(seed);
        var project = ProjectGenerator.Restoration(size, seed);
        var known = new FirstScheduler().Solve(new(project), new(TimeSpan.FromSeconds(30))).Schedule!;
        var now = (int)(known.Makespan * 0.5 * random.NextDouble());
        var ahead = Enumerable.Range(0, size).Where(i => known.Starts[i] >= now && project.Activities[i].Pace == Pace.Pausing)
            .OrderBy(i => known.Starts[i]).Take(20).ToList();
        var found = ahead[random.Next(ahead.Count)];
        var longer = 100 + random.Next(500);
        var activities = project.Activities
            .Select((activity, i) => known.Starts[i] < now ? activity with { Done = new(known.Starts[i], known.Finishes[i]) }
            : activity with { Earliest = Math.Max(now, activity.Earliest), Duration = activity.Duration + (i == found ? longer : 0) });
        return new(new(project with { Activities = activities.ToValueList() }, known.Starts.Select(start => (int?)start).ToValueList(),
            now), known);
    }
}
