using System.IO.Compression;
using System.Net;
using System.Text.RegularExpressions;

namespace Refettle.Server.Tests;

public sealed partial class PageFilesTests
{
    [Theory]
    [InlineData("")]
    [InlineData("car/small-heron/off")]
    public async Task Every_address_of_a_page_gives_the_page(string path)
    {
        await using var garage = await TestGarage.OpenAsync();
        using var page = garage.Page();
        var response = await page.GetAsync(path);
        Assert.Equal("text/html", response.Content.Headers.ContentType?.MediaType);
        Assert.Contains("blazor.webassembly.js", await response.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task The_program_that_runs_in_the_browser_is_served_in_whatever_way_this_was_built()
    {
        await using var garage = await TestGarage.OpenAsync();
        using var page = garage.Page();
        Assert.Equal("text/javascript", (await page.GetAsync("_framework/blazor.webassembly.js")).Content.Headers.ContentType?.MediaType);
        var runtime = NativeRuntime().Match(await page.GetStringAsync("_framework/dotnet.js")).Value;
        var native = await page.GetAsync($"_framework/{runtime}");
        Assert.Equal("application/wasm", native.Content.Headers.ContentType?.MediaType);
    }

    /// <summary>Chromium would be given a runtime for a debugger otherwise, which leaves out what makes it fast.</summary>
    [Fact]
    public async Task The_program_in_the_browser_is_not_slowed_down_for_a_debugger()
    {
        await using var garage = await TestGarage.OpenAsync();
        using var page = garage.Page();
        Assert.Contains("\"debugLevel\": 0", await page.GetStringAsync("_framework/dotnet.js"), StringComparison.Ordinal);
    }

    /// <summary>Over poor Wi-Fi: RFC 9110, section 12.5.3 (Accept-Encoding); read back by the base library.</summary>
    [Fact]
    public async Task A_log_is_sent_compressed_to_whoever_takes_it_so()
    {
        await using var garage = await TestGarage.OpenAsync();
        using var page = garage.Page();
        var path = $"api/cars/{SmallCar.Id}/entries?after=0";
        var plain = await page.GetStringAsync(path);
        page.DefaultRequestHeaders.Add("Accept-Encoding", "br");
        var response = await page.GetAsync(path);
        Assert.Equal(["br"], response.Content.Headers.ContentEncoding);
        var sent = await response.Content.ReadAsByteArrayAsync();
        Assert.InRange(sent.Length, 1, plain.Length / 2);
        using var read = new StreamReader(new BrotliStream(new MemoryStream(sent), CompressionMode.Decompress));
        Assert.Equal(plain, await read.ReadToEndAsync());
    }

    [Fact]
    public async Task What_is_not_there_is_not_a_page()
    {
        await using var garage = await TestGarage.OpenAsync();
        using var page = garage.Page();
        Assert.Equal(HttpStatusCode.NotFound, (await page.GetAsync("api/nothing")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await page.GetAsync("css/nothing.css")).StatusCode);
    }

    [Fact]
    public async Task Pages_run_no_foreign_script_and_lie_in_no_foreign_frame()
    {
        await using var garage = await TestGarage.OpenAsync();
        using var page = garage.Page();
        var policy = (await page.GetAsync("")).Headers.GetValues("Content-Security-Policy").Single();
        Assert.Contains("default-src 'self'", policy);
        Assert.Contains("frame-ancestors 'none'", policy);
        Assert.DoesNotContain("unsafe-inline", policy);
    }

    [GeneratedRegex(@"dotnet\.native\.[a-z0-9]+\.wasm")]
    private static partial Regex NativeRuntime();
}
