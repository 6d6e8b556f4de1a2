using Refettle.Peers.Projects;
using Refettle.Timeline;
using Refettle.Timeline.Scheduling;

namespace Refettle.Tests.Timeline;

public sealed class ScheduleCheckTests
{
    /// <summary>Two evenings of three hours; paint after sanding, and not later than a day after.</summary>
    private static readonly Project Small = new(
        [new("sand", 240, [1], Pace.Pausing), new("dry", 600, [0]), new("paint", 60, [1], Pace.Unbroken, LatestFinish: 4000),
            new("tidy", 30, [1], Pace.Unbroken)],
        [new("person", 1, [new(0, 180), new(1440, 1620), new(2880, 3060)])],
        [new(0, 1), new(0, 2, 0, 1440), new(1, 2)]);

    private static readonly Schedule Good = new([0, 1500, 2880, 2940], [1500, 2100, 2940, 2970]);

    private static string[] Faults(Project project, int[] starts, int[] finishes) =>
        [.. ScheduleCheck.Of(project, new([.. starts], [.. finishes])).Select(fault => fault.ToString())];

    [Fact]
    public void A_good_schedule_has_no_fault() => Assert.Empty(ScheduleCheck.Of(Small, Good));

    [Theory]
    [InlineData(2, 2941, 3001, "at 2941 paint, tidy hold 2")]
    [InlineData(2, 2821, 2881, "without a break inside a window")]
    [InlineData(2, 4320, 4380, "after its latest finish 4000")]
    [InlineData(2, 2000, 2060, "paint starts -100 after the finish of dry, 0 is the least")]
    [InlineData(2, 3000, 3060, "paint starts 1500 after the finish of sand, 1440 is the most")]
    [InlineData(0, 0, 1490, "it is worked on for 230, it needs 240")]
    [InlineData(0, 200, 1680, "it is worked on for 180, it needs 240")]
    [InlineData(1, 1500, 2000, "it goes from 1500 to 2000 and needs 600")]
    [InlineData(3, 2970, 2999, "without a break inside a window")]
    public void A_spoilt_schedule_is_found_out(int activity, int start, int finish, string says)
    {
        var (starts, finishes) = (Good.Starts.ToArray(), Good.Finishes.ToArray());
        (starts[activity], finishes[activity]) = (start, finish);
        Assert.Contains(Faults(Small, starts, finishes), fault => fault.Contains(says, StringComparison.Ordinal));
    }

    [Fact]
    public void Work_starts_in_an_open_minute()
    {
        var project = Small with { Activities = [Small.Activities[0] with { Duration = 180, Earliest = 0 }, .. Small.Activities.Skip(1)] };
        Assert.Contains(Faults(project, [700, 1620, 2880, 2940], [1620, 2220, 2940, 2970]),
            fault => fault.Contains("while closed", StringComparison.Ordinal));
    }

    [Fact]
    public void What_is_done_is_asked_nothing_but_its_time()
    {
        var project = Small with { Activities = [Small.Activities[0] with { Done = new(-500, 1480) }, .. Small.Activities.Skip(1)] };
        Assert.Empty(Faults(project, [-500, 1500, 2880, 2940], [1480, 2100, 2940, 2970]));
        Assert.NotEmpty(Faults(project, [-500, 1500, 2880, 2940], [1479, 2100, 2940, 2970]));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Pulling_an_activity_before_the_one_it_waits_for_is_found_out(int seed)
    {
        var project = ProjectGenerator.Restoration(80, seed);
        var schedule = new FirstScheduler().Solve(new(project), new(TimeSpan.FromMinutes(1))).Schedule!;
        foreach (var lag in project.Lags.Where(lag => lag.Most is null))
        {
            var (starts, finishes) = (schedule.Starts.ToArray(), schedule.Finishes.ToArray());
            var shift = starts[lag.After] - (finishes[lag.Before] + lag.Least) + 1;
            (starts[lag.After], finishes[lag.After]) = (starts[lag.After] - shift, finishes[lag.After] - shift);
            Assert.Contains(Faults(project, starts, finishes), fault => fault.Contains("is the least", StringComparison.Ordinal));
        }
    }
}
