using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Logbook;
using Refettle.Server.Tests;
using Refettle.Web.Garage;
using Refettle.Web.Steps;

namespace Refettle.Web.Tests.Garage;

public sealed class OpenCarTests : IDisposable
{
    private readonly FaultyServer _server = new();
    private readonly MemoryKeeper _browser = new();
    private readonly PhotoOutbox _photos;
    private readonly Lookout _lookout;
    private readonly OpenCar _open;

    public OpenCarTests()
    {
        _photos = new(_server.Api, new MemoryPhotoKeeper());
        _lookout = new(_browser, TimeProvider.System);
        _open = new(_server.Api, _browser, new(_browser, TimeProvider.System), _lookout, _photos, TimeProvider.System);
    }

    [Fact]
    public async Task What_is_kept_is_shown_before_the_server_answers_and_who_asks_meanwhile_waits_too()
    {
        await BeginAsync("a");
        var held = Hold();
        var (first, second) = (_open.OpenAsync("a"), _open.OpenAsync("a"));
        Assert.Equal(("a", true), (_open.Car!.Car.Id, _open.Opening));
        Assert.False(second.IsCompleted);
        held.SetResult();
        await Task.WhenAll(first, second);
        Assert.False(_open.Opening);
    }

    [Fact]
    public async Task Who_goes_on_to_another_car_meanwhile_is_not_led_back()
    {
        await BeginAsync("a");
        await BeginAsync("b");
        var first = Hold();
        var a = _open.OpenAsync("a");
        var second = Hold();
        var b = _open.OpenAsync("b");
        _server.Held = Task.CompletedTask;
        first.SetResult();
        await a;
        Assert.Equal(("b", true), (_open.Car!.Car.Id, _open.Opening));
        second.SetResult();
        await b;
        Assert.Equal(("b", false), (_open.Car!.Car.Id, _open.Opening));
    }

    [Fact]
    public async Task What_is_written_is_shown_while_the_network_is_silent()
    {
        await BeginAsync("a");
        await _open.OpenAsync("a");
        var held = Hold();
        await _open.WriteAsync(new Noted("one", null)).WaitAsync(TimeSpan.FromMinutes(1));
        Assert.Equal((new Noted("one", null), 1), (_open.History!.Lines[^1].Happening, _open.Waiting));
        held.SetResult();
    }

    [Fact]
    public async Task What_devices_are_called_is_known_without_a_network_too()
    {
        await BeginAsync("a");
        _server.Names = new([new("browser-1", "pit phone")]);
        await _open.OpenAsync("a");
        _server.Next = () => FaultyServer.Fate.RequestLost;
        using var later = new OpenCar(
            _server.Api, _browser, new(_browser, TimeProvider.System), _lookout, _photos, TimeProvider.System);
        await later.OpenAsync("a");
        Assert.Equal("pit phone", later.Names.Of("browser-1"));
    }

    [Fact]
    public async Task A_step_is_marked_and_the_mark_is_struck_when_it_is_taken_back()
    {
        await _open.BeginAsync(SmallCar.Id, SmallCar.Happenings);
        await _open.OpenAsync(SmallCar.Id);
        var plan = new AccessPlanner(new ReducedSolver()).Reach(_open.Car!.Car, Question.For(Fact.Free("rear-axle")));
        await _open.FollowAsync(plan);
        foreach (var step in Enumerable.Range(0, plan.Steps.Count).Where(step => !_open.Progress!.Done[step]).Take(3))
        {
            await _open.TickAsync(step);
            Assert.True(_open.Progress!.Done[step]);
            var mark = _open.History!.Lines[^1].Entry.Id;
            await _open.TickAsync(step);
            Assert.False(_open.Progress.Done[step]);
            Assert.Equal(new Struck(mark, null), _open.History.Lines[^1].Happening);
        }
    }

    [Fact]
    public async Task Nobody_is_led_onto_what_was_found_too_weak()
    {
        await _open.BeginAsync(SmallCar.Id, SmallCar.Happenings);
        await _open.OpenAsync(SmallCar.Id);
        var plan = new AccessPlanner(new ReducedSolver()).Reach(_open.Car!.Car, Question.For(Fact.Free("rear-axle")));
        await _open.FollowAsync(plan);
        var stands = plan.Steps.Select(step => step.Fact).ToList().IndexOf(Fact.State("on-stands"));
        Assert.False(_open.Stale);

        await _open.WriteAsync(new SoundnessJudged("body", false));
        Assert.True(_open.Stale);
        Assert.Equal("part body must carry the car and was found unsound", Assert.Single(await _open.TickAsync(stands)).Found);
        Assert.Equal("on-wheels", _open.Car.Car.Stance);

        await _open.WriteAsync(new SoundnessJudged("body", true));
        Assert.Empty(await _open.TickAsync(stands));
        Assert.Equal("on-stands", _open.Car.Car.Stance);
    }

    [Fact]
    public async Task The_newest_mark_is_undone()
    {
        await _open.BeginAsync(SmallCar.Id, [.. SmallCar.Happenings, new StanceTaken("on-stands"), new Noted("cold", null)]);
        await _open.OpenAsync(SmallCar.Id);
        await _open.UndoAsync();
        Assert.Equal("on-wheels", _open.Car!.Car.Stance);
    }

    public void Dispose()
    {
        _open.Dispose();
        _lookout.Dispose();
        _photos.Dispose();
    }

    private Task BeginAsync(string car) => _open.BeginAsync(car, [new CarOpened(car, null, "EUR")]);

    private TaskCompletionSource Hold()
    {
        var held = new TaskCompletionSource();
        _server.Held = held.Task;
        return held;
    }
}
