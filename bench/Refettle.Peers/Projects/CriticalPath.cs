using Refettle.Timeline;

namespace Refettle.Peers.Projects;

/// <summary>The length of the longest path through the lags, without windows and resources: what
/// published deviations are measured from.</summary>
public static class CriticalPath
{
    public static int Length(Project project)
    {
        var starts = new int[project.Activities.Count];
        for (var round = 0; round <= starts.Length; round++)
        {
            var before = starts.Sum(start => (long)start);
            foreach (var lag in project.Lags)
                starts[lag.After] = Math.Max(starts[lag.After],
                    starts[lag.Before] + lag.Least + (lag.Anchor == Anchor.Finish ? project.Activities[lag.Before].Duration : 0));
            if (starts.Sum(start => (long)start) == before)
                break;
        }

        return starts.Select((start, i) => start + project.Activities[i].Duration).DefaultIfEmpty().Max();
    }
}
