using Microsoft.Playwright;

namespace Refettle.Browser.Tests;

/// <summary>The garage's first page while the server is slow, silent or away.</summary>
public sealed class GarageTests(Bench bench) : IClassFixture<Bench>
{
    private const string Cars = "**/api/cars";

    [NeedsChromiumFact]
    public async Task Cars_that_are_kept_are_shown_before_a_silent_server_says_anything()
    {
        await using var visit = await bench.VisitAsync(Looks.Phone());
        await OpenAsync(visit);
        await visit.Page.GetByText("As the server has it.").WaitForAsync();
        await visit.Context.RouteAsync(Cars, _ => Task.CompletedTask);
        await OpenAsync(visit);
        await visit.Page.GetByText("Last known here; asking the server").WaitForAsync();
        await Assertions.Expect(Car(visit)).ToBeVisibleAsync();
    }

    [NeedsChromiumFact]
    public async Task What_the_server_says_later_moves_nothing()
    {
        await using var visit = await bench.VisitAsync(Looks.Phone());
        await OpenAsync(visit);
        await visit.Page.GetByText("As the server has it.").WaitForAsync();
        var go = new TaskCompletionSource();
        await visit.Context.RouteAsync(Cars, async route =>
        {
            await go.Task;
            await route.ContinueAsync();
        });
        await OpenAsync(visit);
        await visit.Page.GetByText("Last known here; asking the server").WaitForAsync();
        var before = await PlacesAsync(visit);
        go.SetResult();
        await visit.Page.GetByText("As the server has it.").WaitForAsync();
        Assert.Equal(before, await PlacesAsync(visit));
    }

    [NeedsChromiumFact]
    public async Task Where_nothing_is_kept_and_the_server_is_silent_a_car_can_be_named()
    {
        await using var visit = await bench.VisitAsync(Looks.Phone());
        await visit.Context.RouteAsync(Cars, _ => Task.CompletedTask);
        await OpenAsync(visit);
        await visit.Page.GetByText("No car known yet; asking the server").WaitForAsync();
        await Assertions.Expect(visit.Page.GetByLabel("A new car")).ToBeVisibleAsync();
    }

    [NeedsChromiumFact]
    public async Task Without_a_server_the_cars_that_are_kept_say_so()
    {
        await using var visit = await bench.VisitAsync(Looks.Phone());
        await OpenAsync(visit);
        await visit.Page.GetByText("As the server has it.").WaitForAsync();
        await visit.Context.RouteAsync(Cars, route => route.AbortAsync());
        await OpenAsync(visit);
        await visit.Page.GetByText("Last known here.", new() { Exact = true }).WaitForAsync();
        await visit.Page.GetByText("the garage's server cannot be reached").WaitForAsync();
        await Assertions.Expect(Car(visit)).ToBeVisibleAsync();
    }

    private static Task<IResponse?> OpenAsync(Visit visit) => visit.Page.GotoAsync(new Uri(visit.Garage.Address, "?all").ToString());

    private static ILocator Car(Visit visit) => visit.Page.Locator("ul.found a");

    private static Task<string> PlacesAsync(Visit visit) =>
        visit.Page.EvaluateAsync<string>(
            "() => JSON.stringify([...document.querySelectorAll('main *')].map(one => one.getBoundingClientRect().top))");
}
