using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Refettle.Browser.Tests;

/// <summary>axe-core on every page, by day and by night, with the 7:1 contrast of WCAG 2.2 AAA 1.4.6 added. A scrolled-over label is not judged.</summary>
public sealed class AxeTests(Bench bench) : IClassFixture<Bench>
{
    private static readonly AxeRunOptions _rules = new()
    {
        Rules = new Dictionary<string, RuleOptions> { ["color-contrast-enhanced"] = new() { Enabled = true }, ["target-size"] = new() { Enabled = true } },
    };

    [NeedsChromiumFact]
    public Task On_a_phone_axe_finds_nothing() => NothingFoundAsync(Looks.Phone(), "phone");

    [NeedsChromiumFact]
    public Task On_a_laptop_axe_finds_nothing() => NothingFoundAsync(Looks.Laptop(), "laptop");

    [NeedsChromiumFact]
    public Task On_the_pages_of_the_scope_axe_finds_nothing() => NothingFoundAsync(Looks.Phone(), "scope", ScopeTour.WalkAsync);

    private async Task NothingFoundAsync(BrowserNewContextOptions screen, string called, Func<Visit, Func<string, Task>, Task>? walk = null)
    {
        await using var visit = await bench.VisitAsync(screen);
        var found = new List<string>();
        await (walk ?? Tour.WalkAsync)(visit, async name =>
        {
            foreach (var (theme, time) in new[] { (ColorScheme.Dark, "dark"), (ColorScheme.Light, "light") })
            {
                await visit.Page.EmulateMediaAsync(new() { ColorScheme = theme });
                await Pictures.TakeAsync(visit.Page, $"{name}-{called}-{time}");
                var result = await visit.Page.RunAxe(_rules);
                found.AddRange(result.Violations.SelectMany(violation => violation.Nodes.Select(node =>
                    $"{name}, {time}: {violation.Id}: {node.Html} {string.Join(' ', node.Any.Select(check => check.Message))}")));
            }
        });
        Assert.True(found.Count == 0, string.Join("\n", found));
        Assert.True(!visit.Complaints.Any(), string.Join("\n", visit.Complaints));
    }
}
