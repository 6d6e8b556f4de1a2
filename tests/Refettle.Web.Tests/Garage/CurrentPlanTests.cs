using Refettle.Access;
using Refettle.Logbook;
using Refettle.Server.Tests;
using Refettle.Web.Garage;

namespace Refettle.Web.Tests.Garage;

public sealed class CurrentPlanTests
{
    private static readonly Question Axle = Question.For(Fact.Free("rear-axle"));

    private readonly FaultyServer _server = new() { Next = () => FaultyServer.Fate.RequestLost };
    private readonly CurrentPlan _plan;

    public CurrentPlanTests() => _plan = new(SmallCar.Id, _server.Api, new MemoryKeeper());

    [Fact]
    public async Task What_is_asked_no_more_is_not_answered_although_it_is_worked_out_here()
    {
        var asked = _plan.AskAsync(Car(), Axle);
        await _plan.ClearAsync();
        await asked;
        Assert.Equal((null, null, false), (_plan.Question, _plan.Plan, _plan.Asking));
    }

    [Fact]
    public async Task Who_follows_another_plan_meanwhile_does_not_wait_for_the_first()
    {
        await _plan.AskAsync(Car(), Axle);
        var other = _plan.Plan! with { Question = Axle with { Without = ["rear-wheel"] } };
        var held = new TaskCompletionSource();
        _server.Held = held.Task;
        var asked = _plan.AskAsync(Car(), Axle);
        await _plan.FollowAsync(other);
        held.SetResult();
        await asked;
        Assert.Equal((other, false), (_plan.Plan, _plan.Asking));
    }

    [Fact]
    public async Task A_plan_for_a_car_that_changed_while_it_was_worked_out_is_of_before()
    {
        var held = new TaskCompletionSource();
        _server.Held = held.Task;
        var asked = _plan.AskAsync(Car(), Axle);
        await _plan.MarkStaleAsync();
        held.SetResult();
        await asked;
        Assert.True(_plan.Stale);
        await _plan.AskAsync(Car(), Axle);
        Assert.False(_plan.Stale);
    }

    private static Car Car() => CarHistory.Of(SmallCar.Id, Entries()).Car;

    private static ValueList<Entry> Entries() =>
        new LogWriter("bench", TimeProvider.System, System.Security.Cryptography.RandomNumberGenerator.Create())
            .Next(SmallCar.Id, LogEnd.Empty, SmallCar.Happenings);
}
