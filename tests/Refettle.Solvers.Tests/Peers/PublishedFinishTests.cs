using Refettle.Peers.Projects;
using Refettle.Solvers.Tests.Published;
using Refettle.Timeline;
using Refettle.Timeline.Scheduling;

namespace Refettle.Solvers.Tests.Peers;

/// <summary>The comparison that the bench fails by: invented answers held against invented and published finishes.</summary>
public sealed class PublishedFinishTests
{
    private static readonly PublishedFinish Open = new(40, 44);
    private static readonly PublishedFinish Impossible = new(null, null);

    [Theory]
    [InlineData(ScheduleStatus.Feasible, 44, 40)]
    [InlineData(ScheduleStatus.Feasible, 50, 44)]
    [InlineData(ScheduleStatus.Optimal, 40, 40)]
    [InlineData(ScheduleStatus.Optimal, 44, 44)]
    [InlineData(ScheduleStatus.Unknown, null, 30)]
    public void What_may_be_is_let_pass(ScheduleStatus status, int? finish, int bound) =>
        Assert.Null(Open.ContradictedBy(Answer(status, finish, bound)));

    [Theory]
    [InlineData(ScheduleStatus.Feasible, 39, 30, "finishes at 39, but 40 is published as the earliest possible")]
    [InlineData(ScheduleStatus.Optimal, 45, 45, "proven at 45, but a finish at 44 is published")]
    [InlineData(ScheduleStatus.Feasible, 46, 45, "bound 45, but a finish at 44 is published")]
    [InlineData(ScheduleStatus.Unknown, null, 45, "bound 45, but a finish at 44 is published")]
    [InlineData(ScheduleStatus.Impossible, null, 0, "called impossible, but a finish at 44 is published")]
    public void What_cannot_be_is_told(ScheduleStatus status, int? finish, int bound, string says) =>
        Assert.Equal(says, Open.ContradictedBy(Answer(status, finish, bound)));

    [Fact]
    public void What_is_impossible_has_no_schedule()
    {
        Assert.Null(Impossible.ContradictedBy(Answer(ScheduleStatus.Impossible, null, 0)));
        Assert.Equal("finishes at 12, but is published as impossible", Impossible.ContradictedBy(Answer(ScheduleStatus.Feasible, 12, 9)));
    }

    /// <summary>PSPLIB's j301_1 (Kolisch and Sprecher 1996) and the first two of ProGen/max j10, the second without a schedule.</summary>
    [SharedDataTheory]
    [InlineData("rcpsp_sm", "j30", 480, "j301_1.sm", 43)]
    [InlineData("rcpsp_max", "j10", 270, "psp1.sch", 26)]
    [InlineData("rcpsp_max", "j10", 270, "psp2.sch", null)]
    public void The_published_list_is_read(string collection, string set, int instances, string name, int? finish)
    {
        var finishes = SharedData.Finishes(collection, set);
        Assert.Equal(instances, finishes.Count);
        Assert.Equal(new(finish, finish), finishes[name]);
    }

    private static ScheduleAnswer Answer(ScheduleStatus status, int? finish, int bound) =>
        new(status, finish is { } at ? new Schedule([0], [at]) : null, bound, [], []);
}
