using System.Net;
using System.Security.Cryptography;
using Refettle.Logbook;
using Refettle.Storage.Pairing;
using Refettle.Web.Garage;

namespace Refettle.Server.Tests.Pairing;

/// <summary>A garage that others on the network can reach. They come in at another address than 127.0.0.1;
/// so do these tests, at 127.0.0.2.</summary>
public sealed class PairingTests
{
    [Fact]
    public async Task From_elsewhere_only_pairing_and_health_answer()
    {
        await using var garage = await TestGarage.OpenAsync(toNetwork: true);
        using var stranger = FromElsewhere(garage);
        Assert.Equal(HttpStatusCode.OK, (await stranger.GetAsync("api/health")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await stranger.GetAsync("pair")).StatusCode);
        foreach (var path in AllPaths(garage))
            Assert.True((await stranger.GetAsync(path)).StatusCode is HttpStatusCode.Unauthorized or HttpStatusCode.Redirect, path);
        foreach (var path in AllPaths(garage))
            Assert.True((await stranger.PostTextAsync(path, "[]")).StatusCode is HttpStatusCode.Unauthorized or HttpStatusCode.Redirect,
                path);
    }

    [Fact]
    public async Task A_paired_device_may_read_and_write_until_it_is_revoked()
    {
        await using var garage = await TestGarage.OpenAsync(toNetwork: true);
        using var phone = FromElsewhere(garage);
        var paired = await PairAsync(phone, garage.Logbook.Devices.NewCode().Value);
        Assert.Equal(HttpStatusCode.Redirect, paired.StatusCode);
        var cookie = paired.Headers.GetValues("Set-Cookie").Single();
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=strict", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(HttpStatusCode.OK, (await phone.GetAsync("api/cars")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await phone.PostTextAsync($"api/cars/{SmallCar.Id}/entries", "[]")).StatusCode);

        using var page = garage.Page();
        var device = (await (await page.GetAsync("api/devices")).ReadAsync<ValueList<PairedDevice>>()).Single();
        Assert.Equal(HttpStatusCode.OK, (await page.PostTextAsync($"api/devices/{device.Id}/revoke", "{}")).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await phone.GetAsync("api/cars")).StatusCode);
    }

    [Fact]
    public async Task What_a_paired_device_sends_is_known_by_the_name_it_was_paired_under_and_kept_as_written()
    {
        await using var garage = await TestGarage.OpenAsync(toNetwork: true);
        using var phone = FromElsewhere(garage);
        using var page = garage.Page();
        await PairAsync(phone, garage.Logbook.Devices.NewCode().Value);
        await SendAsync(phone, "browser-1");
        await SendAsync(page, "browser-2");
        var known = garage.Logbook.Devices.All().Single();
        Assert.True(garage.Logbook.Devices.Revoke(known.Id).IsGood);

        var names = await (await page.GetAsync("api/writers")).ReadAsync<DeviceNames>();
        Assert.Equal(new NamedDevice("browser-1", "phone"), Assert.Single(names.Known));
        Assert.Equal(["browser-1", "browser-2"], garage.Logbook.Read(SmallCar.Id).Select(kept => kept.Entry.Device).Distinct().Skip(1));
    }

    [Fact]
    public async Task A_wrong_code_says_so_and_too_many_are_slowed_down()
    {
        await using var garage = await TestGarage.OpenAsync(toNetwork: true);
        using var stranger = FromElsewhere(garage);
        var wrong = await PairAsync(stranger, "00000-00000");
        Assert.Equal(HttpStatusCode.Forbidden, wrong.StatusCode);
        Assert.Contains("Each works once", await wrong.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        for (var more = 0; more < 9; more++)
            await PairAsync(stranger, "00000-00000");
        var slowed = await PairAsync(stranger, garage.Logbook.Devices.NewCode().Value);
        Assert.Equal(HttpStatusCode.TooManyRequests, slowed.StatusCode);
        Assert.Contains("Wait a minute", await slowed.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Equal("text/html", slowed.Content.Headers.ContentType!.MediaType);
    }

    [Fact]
    public async Task Another_site_cannot_pair_in_a_visitors_name()
    {
        await using var garage = await TestGarage.OpenAsync(toNetwork: true);
        using var stranger = FromElsewhere(garage);
        stranger.DefaultRequestHeaders.Add("Origin", "http://evil.example");
        Assert.Equal(HttpStatusCode.Forbidden, (await PairAsync(stranger, garage.Logbook.Devices.NewCode().Value)).StatusCode);
    }

    [Fact]
    public async Task What_is_scanned_is_shown_as_text_never_as_markup()
    {
        await using var garage = await TestGarage.OpenAsync(toNetwork: true);
        using var page = garage.Page();
        var shown = await page.GetStringAsync("pair?code=%22%3E%3Cscript%3Ex");
        Assert.DoesNotContain("<script", shown, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_sits_at_the_machine_needs_no_code()
    {
        await using var garage = await TestGarage.OpenAsync(toNetwork: true);
        using var page = garage.Page();
        Assert.Equal(HttpStatusCode.OK, (await page.GetAsync("api/cars")).StatusCode);
    }

    [Fact]
    public async Task Without_the_network_there_is_no_pairing()
    {
        await using var garage = await TestGarage.OpenAsync();
        using var page = garage.Page();
        Assert.Equal(HttpStatusCode.NotFound, (await page.GetAsync("api/devices")).StatusCode);
    }

    private static string[] AllPaths(TestGarage garage)
    {
        string[] paths = [.. garage.Routes
            .Where(path => path is not "/pair" and not "/api/health" and not "/pair/style.css" and not "/pair/authority.crt")];
        Assert.True(paths.Length > 10);
        return paths;
    }

    private static HttpClient FromElsewhere(TestGarage garage)
    {
        var client = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false })
        { BaseAddress = new($"http://127.0.0.2:{garage.Address.Port}") };
        client.DefaultRequestHeaders.Host = Environment.MachineName;
        client.DefaultRequestHeaders.Add(ServerApi.OwnHeader, "1");
        return client;
    }

    private static Task<HttpResponseMessage> PairAsync(HttpClient client, string code) =>
        client.PostAsync("pair", new FormUrlEncodedContent(new Dictionary<string, string> { ["code"] = code, ["name"] = "phone" }));

    private static async Task SendAsync(HttpClient client, string device)
    {
        ValueList<Entry> sent = [new LogWriter(device, TimeProvider.System, RandomNumberGenerator.Create())
            .Next(SmallCar.Id, LogEnd.Of(device, []), new Noted("seen", null))];
        Assert.Equal(HttpStatusCode.OK, (await client.PostJsonAsync($"api/cars/{SmallCar.Id}/entries", sent)).StatusCode);
    }
}
