using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Refettle.Server.Tests;

namespace Refettle.Browser.Tests;

/// <summary>The start of the program, and its further part, where files do not come as they should. Without the service
/// worker, which would have kept them.</summary>
public sealed class StartTests(Bench bench) : IClassFixture<Bench>
{
    /// <summary>So often the runtime asks for a file before it gives up.</summary>
    private const int Tries = 3;

    [NeedsChromiumTheory]
    [InlineData("blazor\\.webassembly\\.js", 1)]
    [InlineData("/dotnet\\.js", 1)]
    [InlineData("dotnet\\.native\\..*\\.wasm", 1)]
    [InlineData("System\\.Linq\\.[a-z0-9]{10}\\.wasm", 1)]
    [InlineData("System\\.Linq\\.[a-z0-9]{10}\\.wasm", Tries)]
    [InlineData("Refettle\\.Further\\..*\\.wasm", 1)]
    [InlineData("Refettle\\.Further\\..*\\.wasm", 2 * Tries)]
    public Task A_page_comes_by_itself_though_a_file_was_not_fetched(string file, int times) =>
        ComesAsync(file, times, route => route.AbortAsync("connectionreset"));

    [NeedsChromiumFact]
    public Task A_page_comes_by_itself_though_the_server_gave_something_else() =>
        ComesAsync("Refettle\\.Further\\..*\\.wasm", 3 * Tries, route => route.FulfillAsync(new() { Status = 404, Body = "not here" }));

    [NeedsChromiumFact]
    public async Task A_page_that_waits_in_vain_says_so_and_leads_on()
    {
        await using var visit = await VisitAsync();
        await visit.Context.RouteAsync("**/Refettle.Further.*.wasm", _ => Task.CompletedTask);
        await visit.Page.GotoAsync(new Uri(visit.Garage.Address, "numbers").ToString());
        await visit.Page.GetByRole(AriaRole.Heading, new() { Name = "This page is not here yet" }).WaitForAsync();
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "To the garage" }).ClickAsync();
        await visit.Page.GetByRole(AriaRole.Searchbox).WaitForAsync();
    }

    [NeedsChromiumFact]
    public async Task A_car_s_log_is_fetched_while_the_program_is_still_on_its_way()
    {
        await using var visit = await VisitAsync();
        await visit.Context.RouteAsync(new Regex("dotnet\\.native\\..*\\.wasm"), _ => Task.CompletedTask);
        await visit.Page
            .AddInitScriptAsync(
                "const all = IDBObjectStore.prototype.getAll; IDBObjectStore.prototype.getAll = function (...of) { if (this.name === 'entries') globalThis.asked = true; return all.apply(this, of); };");
        await visit.Page.GotoAsync(new Uri(visit.Garage.Address, $"car/{SmallCar.Id}").ToString());
        await visit.Page.WaitForFunctionAsync("() => globalThis.asked");
    }

    [NeedsChromiumFact]
    public async Task A_car_is_opened_while_the_part_of_its_page_is_still_on_its_way()
    {
        await using var visit = await VisitAsync();
        await visit.Context.RouteAsync("**/Refettle.Further.*.wasm", _ => Task.CompletedTask);
        await visit.Page.RunAndWaitForRequestAsync(
            () => visit.Page.GotoAsync(new Uri(visit.Garage.Address, $"car/{SmallCar.Id}/bags").ToString()),
            request => request.Url.Contains("/entries?after=", StringComparison.Ordinal));
    }

    /// <summary>The bench numbers, after the first requests for a file were answered otherwise.</summary>
    private async Task ComesAsync(string file, int times, Func<IRoute, Task> answer)
    {
        await using var visit = await VisitAsync();
        await visit.Context.RouteAsync(new Regex(file), route => times-- > 0 ? answer(route) : route.ContinueAsync());
        await visit.Page.GotoAsync(new Uri(visit.Garage.Address, "numbers").ToString());
        try
        {
            await visit.Page.GetByRole(AriaRole.Heading, new() { Name = "Bench numbers", Exact = true }).WaitForAsync();
        }
        catch (TimeoutException)
        {
            Assert.Fail(await visit.ToldAsync());
        }

        Assert.True(times <= 0, "The file was not asked for as often as the test would have it.");
    }

    private Task<Visit> VisitAsync()
    {
        var look = Looks.Phone();
        look.ServiceWorkers = ServiceWorkerPolicy.Block;
        return bench.VisitAsync(look);
    }
}
