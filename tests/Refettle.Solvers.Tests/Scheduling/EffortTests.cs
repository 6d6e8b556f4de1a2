using Refettle.Solvers.Scheduling;
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
}
