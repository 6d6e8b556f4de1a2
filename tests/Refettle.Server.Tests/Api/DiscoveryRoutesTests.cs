using System.Net;
using Refettle.Discovery;
using Refettle.Logbook;
using Refettle.Web.Garage;

namespace Refettle.Server.Tests.Api;

public sealed class DiscoveryRoutesTests
{
    private static readonly string _path = $"api/cars/{SmallCar.Id}/difference";

    [Fact]
    public async Task Entries_are_compared_with_the_car_without_them()
    {
        await using var garage = await TestGarage.OpenAsync();
        using var page = garage.Page();
        var decided =
            garage.Logbook.Write(SmallCar.Id, new VerdictGiven(new("damper-left", VerdictKind.Replace, DoneBy.Self, null))).Value[0];
        var difference = await (await page.PostJsonAsync(_path, new DifferenceAsked([decided.Id]))).ReadAsync<OutlookDifference>();
        Assert.Contains(difference.Basket!.More, piece => piece.Thing == "part damper-left");
        Assert.Contains(difference.Plan!.More, step => step.Fact == Fact.Off("damper-left"));
    }

    [Fact]
    public async Task Entries_that_the_server_does_not_have_are_told()
    {
        await using var garage = await TestGarage.OpenAsync();
        using var page = garage.Page();
        Assert.Equal(HttpStatusCode.UnprocessableEntity,
            (await page.PostJsonAsync(_path, new DifferenceAsked([Guid.NewGuid()]))).StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await page.PostJsonAsync(_path, new DifferenceAsked([]))).StatusCode);
    }
}
