using System.Net;
using Refettle.Web.Garage;

namespace Refettle.Server.Tests.Guards;

public sealed class RequestGuardTests
{
    private static string Entries => $"api/cars/{SmallCar.Id}/entries";

    [Theory]
    [InlineData("evil.example", HttpStatusCode.MisdirectedRequest)]
    [InlineData("localhost.evil.example", HttpStatusCode.MisdirectedRequest)]
    [InlineData("localhost", HttpStatusCode.OK)]
    public async Task A_foreign_name_that_leads_here_is_turned_away(string host, HttpStatusCode expected)
    {
        await using var garage = await TestGarage.OpenAsync();
        using var page = garage.Page();
        page.DefaultRequestHeaders.Host = host;
        Assert.Equal(expected, (await page.GetAsync("api/health")).StatusCode);
    }

    [Theory]
    [InlineData("Origin", "http://evil.example")]
    [InlineData("Origin", "null")]
    [InlineData("Sec-Fetch-Site", "cross-site")]
    [InlineData("Sec-Fetch-Site", "same-site")]
    public async Task A_page_of_another_site_cannot_write(string header, string value)
    {
        await using var garage = await TestGarage.OpenAsync();
        using var page = garage.Page();
        page.DefaultRequestHeaders.Add(header, value);
        Assert.Equal(HttpStatusCode.Forbidden, (await page.PostTextAsync(Entries, "[]")).StatusCode);
    }

    [Fact]
    public async Task A_form_cannot_write()
    {
        await using var garage = await TestGarage.OpenAsync();
        using var form = new HttpClient { BaseAddress = garage.Address };
        Assert.Equal(HttpStatusCode.Forbidden, (await form.PostTextAsync(Entries, "[]")).StatusCode);
        form.DefaultRequestHeaders.Add(ServerApi.OwnHeader, "1");
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, (await form.PostTextAsync(Entries, "[]", "text/plain")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await form.PostTextAsync(Entries, "[]")).StatusCode);
    }

    [Fact]
    public async Task The_server_listens_on_this_machine_alone()
    {
        await using var garage = await TestGarage.OpenAsync();
        Assert.Equal("127.0.0.1", garage.Address.Host);
    }
}
