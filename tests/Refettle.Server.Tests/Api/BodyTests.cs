using System.Net;
using Refettle.Web.Garage;

namespace Refettle.Server.Tests.Api;

public sealed class BodyTests
{
    [Theory]
    [InlineData("")]
    [InlineData("null")]
    [InlineData("{")]
    [InlineData("[]")]
    [InlineData("{\"goals\":[\"rear axle\"]}")]
    [InlineData("{\"goals\":[7]}")]
    [InlineData("\u0000")]
    public async Task What_is_no_question_gets_one_clear_message(string body)
    {
        await using var garage = await TestGarage.OpenAsync();
        using var page = garage.Page();
        var response = await page.PostTextAsync($"api/cars/{SmallCar.Id}/reach", body);
        Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
        var text = await response.Content.ReadAsStringAsync();
        Assert.DoesNotContain("   at ", text, StringComparison.Ordinal);
        Assert.Contains("the body", Assert.Single((await response.ReadAsync<Problem>()).Faults!).Place);
    }

    [Fact]
    public async Task Nesting_a_hundred_thousand_deep_is_refused()
    {
        await using var garage = await TestGarage.OpenAsync();
        using var page = garage.Page();
        var response = await page.PostTextAsync($"api/cars/{SmallCar.Id}/reach", new string('[', 100_000));
        Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
    }

    [Fact]
    public async Task A_body_over_the_limit_is_refused()
    {
        await using var garage = await TestGarage.OpenAsync();
        using var page = garage.Page();
        var response = await page.PostTextAsync($"api/cars/{SmallCar.Id}/reach", new string(' ', 300_000) + "{}");
        Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
        Assert.Contains("larger", (await response.ReadAsync<Problem>()).Title);
    }
}
