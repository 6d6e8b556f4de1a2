using System.Globalization;
using Refettle.Peers.Projects;
using Refettle.Solvers.Scheduling;
using Refettle.Solvers.Tests.Published;
using Refettle.Timeline;
using Refettle.Timeline.Scheduling;

namespace Refettle.Solvers.Tests.Scheduling;

/// <summary>Published instances against their published best finishes: PSPLIB j30 (Kolisch and Sprecher 1996, optima of the Ghent list of
/// September 2024) and ProGen/max (Kolisch, Schwindt and Sprecher 1999). A sample; all of them with the bench's psplib.</summary>
public sealed class PublishedProjectTests
{
    private static readonly ScheduleLimits Limits = new(TimeSpan.FromMinutes(2));

    [SharedDataTheory]
    [InlineData("rcpsp_sm", "j30", 30)]
    [InlineData("rcpsp_max", "ubo10", 6)]
    [InlineData("rcpsp_max", "ubo20", 15)]
    [InlineData("rcpsp_max", "j10", 20)]
    [InlineData("rcpsp_max", "j20", 30)]
    public void The_finish_is_the_published_one(string collection, string set, int every) =>
        Compare(collection, set, (_, place) => place % every == 2);

    /// <summary>Two activities of it must start together, and others follow them.</summary>
    [SharedDataTheory]
    [InlineData("j20", "psp119.sch")]
    public void What_starts_together_is_placed_before_what_follows_it(string set, string instance) =>
        Compare("rcpsp_max", set, (name, _) => name == instance);

    private static void Compare(string collection, string set, Func<string, int, bool> isTaken)
    {
        var published = SharedData.Finishes(collection, set).Where((row, place) => isTaken(row.Key, place)).ToList();
        Assert.NotEmpty(published);
        foreach (var (name, finish) in published)
        {
            var project = PublishedProject.Parse(SharedData.Read(collection, set, name), Path.GetExtension(name));
            var answer = new ConstraintScheduler().Solve(new(project), Limits);
            Assert.Equal((name, finish.High), (name, answer.Schedule?.Makespan));
            Assert.Equal(finish.High is null ? ScheduleStatus.Impossible : ScheduleStatus.Optimal, answer.Status);
            Assert.Empty(answer.Schedule is { } schedule ? ScheduleCheck.Of(project, schedule) : []);
        }
    }

    [SharedDataTheory]
    [InlineData("j30", "j301_1.sm")]
    [InlineData("j60", "j6013_1.sm")]
    public void The_critical_path_is_the_published_one(string set, string name)
    {
        var rows = SharedData.Read("rcpsp_sm", "best_known.csv").Split('\n').Select(line => line.Split(',')).ToList();
        var expected = int.Parse(rows.Single(row => row.Length > 3 && row[0] == set && row[1] == name)[3], CultureInfo.InvariantCulture);
        Assert.Equal(expected, CriticalPath.Length(PublishedProject.Parse(SharedData.Read("rcpsp_sm", set, name), ".sm")));
    }
}
