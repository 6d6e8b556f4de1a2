using Bunit;
using Refettle.Logbook;
using Refettle.Server.Tests;
using Refettle.Web.Garage;
using Refettle.Web.Pages;
using Refettle.Web.Tests.Garage;

namespace Refettle.Web.Tests.CloseUp;

public sealed class ClosePageTests : BunitContext
{
    private readonly FaultyServer _server = new();

    public ClosePageTests() => Services.AddGarage(_server);

    [Fact]
    public async Task Nothing_is_let_down_onto_what_was_found_too_weak()
    {
        using (var log = new CarLog(SmallCar.Id, "bench", _server.Api, new MemoryKeeper(), TimeProvider.System))
        {
            foreach (var happening in SmallCar.Happenings.Concat([new StanceTaken("on-stands"), new SoundnessJudged("body", false)]))
                await log.WriteAsync(happening);
            await log.SyncAsync();
        }

        var page = Render<ClosePage>(parameters => parameters.Add(shown => shown.Id, SmallCar.Id));
        page.WaitForAssertion(() => Assert.Equal("It stands so", page.Find("button.main").TextContent));
        var entries = _server.Entries.Count;
        await page.TouchAsync("button.main", element => element.ClickAsync());
        page.WaitForAssertion(() => Assert.Contains("part body must carry the car and was found unsound", page.Find("main").TextContent));
        Assert.Equal(entries, _server.Entries.Count);
    }
}
