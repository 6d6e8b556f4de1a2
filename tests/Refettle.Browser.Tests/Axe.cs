using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Refettle.Browser.Tests;

/// <summary>axe-core by day and by night, with the 7:1 contrast of WCAG 2.2 AAA 1.4.6 added. A scrolled-over label is not judged.</summary>
internal static class Axe
{
    private static readonly AxeRunOptions _rules = new()
    {
        Rules = new Dictionary<string, RuleOptions>
        { ["color-contrast-enhanced"] = new() { Enabled = true }, ["target-size"] = new() { Enabled = true } },
    };

    /// <summary>What it finds on the page, of which pictures are taken as it goes.</summary>
    public static async Task<IReadOnlyList<string>> FaultsAsync(IPage page, string picture)
    {
        var found = new List<string>();
        foreach (var (theme, time) in new[] { (ColorScheme.Dark, "dark"), (ColorScheme.Light, "light") })
        {
            await page.EmulateMediaAsync(new() { ColorScheme = theme });
            await Pictures.TakeAsync(page, $"{picture}-{time}");
            var result = await page.RunAxe(_rules);
            found.AddRange(result.Violations.SelectMany(violation => violation.Nodes.Select(node =>
                $"{time}: {violation.Id}: {node.Html} {string.Join(' ', node.Any.Select(check => check.Message))}")));
        }

        return found;
    }
}
