namespace Refettle.Browser.Tests;

/// <summary>The pages as a program of the phone's own: what the browser itself says of the manifest (W3C, Web Application
/// Manifest) and of installing them.</summary>
public sealed class InstallableTests(Bench bench) : IClassFixture<Bench>
{
    /// <summary>That it forgets everything at its end, the test's browser cannot help.</summary>
    private const string OfTheTest = "in-incognito";

    [NeedsChromiumFact]
    public async Task The_browser_has_nothing_against_installing_the_pages()
    {
        await using var visit = await bench.VisitAsync(Looks.Phone());
        await visit.Page.WaitForFunctionAsync("async () => (await navigator.serviceWorker.ready).active !== null");
        var session = await visit.Context.NewCDPSessionAsync(visit.Page);
        var manifest = (await session.SendAsync("Page.getAppManifest"))!.Value;
        Assert.EndsWith(".webmanifest", manifest.GetProperty("url").GetString(), StringComparison.Ordinal);
        Assert.Empty(manifest.GetProperty("errors").EnumerateArray());
        var against = (await session.SendAsync("Page.getInstallabilityErrors"))!.Value.GetProperty("installabilityErrors");
        Assert.Equal([OfTheTest], against.EnumerateArray().Select(error => error.GetProperty("errorId").GetString()!));
    }
}
