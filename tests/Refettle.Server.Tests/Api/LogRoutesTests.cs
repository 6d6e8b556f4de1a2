using System.Net;
using System.Security.Cryptography;
using Refettle.Logbook;
using Refettle.Web.Garage;

namespace Refettle.Server.Tests.Api;

public sealed class LogRoutesTests
{
    private static string Path => $"api/cars/{SmallCar.Id}/entries";

    [Fact]
    public async Task Entries_of_another_device_are_taken_once_and_come_back_letter_for_letter()
    {
        await using var garage = await TestGarage.OpenAsync();
        using var page = garage.Page();
        var before = await (await page.GetAsync(Path)).ReadAsync<EntryPage>();
        var entry = Written(before.Entries, new StepDone(Fact.Open("hose-union"), "way", new(7)));

        Assert.Equal(new EntriesKept(1), await (await page.PostJsonAsync(Path, ValueList.Create([entry]))).ReadAsync<EntriesKept>());
        Assert.Equal(new EntriesKept(0), await (await page.PostJsonAsync(Path, ValueList.Create([entry]))).ReadAsync<EntriesKept>());

        var after = await (await page.GetAsync($"{Path}?after={before.Last}")).ReadAsync<EntryPage>();
        Assert.Equal([entry], after.Entries);
        Assert.True(after.Last > before.Last);
    }

    [Fact]
    public async Task One_bad_entry_keeps_the_whole_batch_out_and_every_fault_is_named()
    {
        await using var garage = await TestGarage.OpenAsync();
        using var page = garage.Page();
        var before = await (await page.GetAsync(Path)).ReadAsync<EntryPage>();
        var good = Written(before.Entries, new Noted("good", null));
        var response =
            await page.PostJsonAsync(Path, ValueList.Create([good, good with { Salt = "short" }, good with { Car = "another" }]));

        Assert.Equal(HttpStatusCode.UnprocessableEntity, response.StatusCode);
        Assert.Equal("application/problem+json", response.Content.Headers.ContentType?.MediaType);
        Assert.Equal(2, (await response.ReadAsync<Problem>()).Faults!.Count);
        Assert.Equal(before, await (await page.GetAsync(Path)).ReadAsync<EntryPage>());
    }

    [Fact]
    public async Task A_car_that_is_not_there_is_named()
    {
        await using var garage = await TestGarage.OpenAsync();
        using var page = garage.Page();
        var response = await page.GetAsync("api/cars/nobody/entries");
        Assert.Equal(HttpStatusCode.NotFound, response.StatusCode);
        Assert.Contains("nobody", (await response.ReadAsync<Problem>()).Title);
    }

    [Fact]
    public async Task The_cars_are_listed_by_name()
    {
        await using var garage = await TestGarage.OpenAsync();
        using var page = garage.Page();
        var car = Assert.Single(await (await page.GetAsync("api/cars")).ReadAsync<ValueList<ShelfCar>>());
        Assert.Equal((SmallCar.Id, "Small Heron"), (car.Id, car.Name));
    }

    private static Entry Written(ValueList<Entry> known, Happening happening) =>
        new LogWriter("phone", TimeProvider.System, RandomNumberGenerator.Create()).Next(SmallCar.Id, LogEnd.Of("phone", known), happening);
}
