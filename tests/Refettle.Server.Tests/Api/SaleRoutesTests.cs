using System.Net;
using Refettle.SaleFile.Sealing;
using Refettle.Storage.Keys;

namespace Refettle.Server.Tests.Api;

public sealed class SaleRoutesTests
{
    [Theory]
    [InlineData("html", "text/html")]
    [InlineData("pdf", "application/pdf")]
    public async Task The_sale_file_comes_sealed(string form, string type)
    {
        await using var garage = await TestGarage.OpenAsync(planner: null);
        using var page = garage.Page();
        var given = await page.GetAsync($"api/cars/{SmallCar.Id}/sale-file.{form}?hours=true");
        Assert.Equal((HttpStatusCode.OK, type), (given.StatusCode, given.Content.Headers.ContentType?.MediaType));
        Assert.Equal($"{SmallCar.Id}.{form}", given.Content.Headers.ContentDisposition?.FileName);
        var found = Verifier.Of(await given.Content.ReadAsByteArrayAsync(), new EcdsaSeal()).Value;
        Assert.Equal((SealStanding.Untouched, SmallCar.Id), (found.Standing, found.Header.Car));
        Assert.Equal(["prices", "names and addresses"], found.Header.Hidden);
    }

    [Fact]
    public async Task It_is_made_at_the_time_of_the_server_s_clock()
    {
        await using var garage = await TestGarage.OpenAsync(planner: null, clock: new Stopped());
        using var page = garage.Page();
        Assert.Contains("Made 2031-05-04 20:15 UTC", await page.GetStringAsync($"api/cars/{SmallCar.Id}/sale-file.html"),
            StringComparison.Ordinal);
    }

    private sealed class Stopped : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => new(2031, 5, 4, 20, 15, 0, TimeSpan.Zero);
    }

    [Fact]
    public async Task What_is_not_there_is_said_to_be_missing()
    {
        await using var garage = await TestGarage.OpenAsync(planner: null);
        using var page = garage.Page();
        Assert.Equal(HttpStatusCode.NotFound, (await page.GetAsync("api/cars/no-such/sale-file.pdf")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await page.GetAsync($"api/cars/{SmallCar.Id}/sale-file.doc")).StatusCode);
    }
}
