using Bunit;
using Refettle.Logbook;
using Refettle.Server.Tests;
using Refettle.Web.Garage;
using Refettle.Web.Pages;
using Refettle.Web.Tests.Garage;

namespace Refettle.Web.Tests.Times;

public sealed class TonightPageTests : BunitContext
{
    private readonly FaultyServer _server = new() { KeepsLogsOnly = true };

    public TonightPageTests() => Services.AddGarage(_server);

    /// <summary>Under the car one wants to know what to do now, and to say that it is done.</summary>
    [Fact]
    public async Task A_task_tells_its_first_step_and_one_tap_marks_it()
    {
        await WriteAsync(
            [.. SmallCar.Happenings, new JobEntered(new() { Id = "hose", Name = "Brake hose", Goals = [Fact.Free("brake-hose")] }),
                new ScopeChosen(["hose"]),
                new SpellAdded(new()
                    { Id = "evenings", First = new(2026, 3, 1), From = new(18, 0), Until = new(21, 0),
                        Repeats = new(Rhythm.Daily, 1, []) })]);
        var page = Render<TonightPage>(parameters => parameters.Add(shown => shown.Id, SmallCar.Id));
        var done = await page.WaitForElementAsync(".first-step button", TimeSpan.FromSeconds(30));
        Assert.Equal("Done: " + page.Find(".offers h2").TextContent, done.GetAttribute("aria-label"));
        await page.TouchAsync(".first-step button", element => element.ClickAsync());
        page.WaitForAssertion(() => Assert.Contains(_server.Entries, entry => entry.Kind is "step-done" or "stance-taken"));
    }

    private async Task WriteAsync(IEnumerable<Happening> happenings)
    {
        using var log = new CarLog(SmallCar.Id, "bench", _server.Api, new MemoryKeeper(), TimeProvider.System);
        foreach (var happening in happenings)
            await log.WriteAsync(happening);
        await log.SyncAsync();
    }
}
