using System.Collections.Concurrent;
using Refettle.Peers.Projects;
using Refettle.Solvers.Scheduling;
using Refettle.Solvers.Tests.Published;
using Refettle.Timeline.Scheduling;

namespace Refettle.Solvers.Tests.Scheduling;

public sealed class EffortTests
{
    /// <summary>A search that ends in the moment in which its time is over puts its token away while the clock
    /// ticks: nothing falls over. An exception on the timer's thread would end the test run (.NET: unhandled
    /// exceptions of timers end the process).</summary>
    [Fact]
    public async Task A_tick_after_the_end_harms_nothing()
    {
        var effort = new Effort(new(TimeSpan.Zero), TimeProvider.System, CancellationToken.None);
        for (var i = 0; i < 2000; i++)
            effort.Until(0).Dispose();
        await Task.Delay(100);
        Assert.True(effort.IsOver);
    }

    /// <summary>Whoever waits for the pool would wait for the search: the ticks that are to end it, and the pages.</summary>
    [SharedDataTheory]
    [InlineData("j6025_3.sm")]
    [InlineData("j6045_1.sm")]
    public void No_search_keeps_a_thread_of_the_pool(string name)
    {
        var project = PublishedProject.Parse(SharedData.Read("rcpsp_sm", "j60", name), ".sm");
        var caller = Environment.CurrentManagedThreadId;
        var areOfPool = new ConcurrentBag<bool>();
        new ConstraintScheduler().Solve(new(project), new(TimeSpan.FromSeconds(2)), new Told(() =>
        {
            if (Environment.CurrentManagedThreadId != caller)
                areOfPool.Add(Thread.CurrentThread.IsThreadPoolThread);
        }));
        Assert.NotEmpty(areOfPool);
        Assert.All(areOfPool, Assert.False);
    }

    private sealed class Told(Action tell) : IProgress<ScheduleAnswer>
    {
        public void Report(ScheduleAnswer value) => tell();
    }
}
