using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Refettle.Browser.Tests;

public sealed class EveryPageTests(Bench bench) : IClassFixture<Bench>
{
    /// <summary>axe-core's rules, with the 7:1 contrast of WCAG 2.2 AAA 1.4.6 added. A scrolled-over label is not judged.</summary>
    private static readonly AxeRunOptions _rules = new()
    {
        Rules = new Dictionary<string, RuleOptions> { ["color-contrast-enhanced"] = new() { Enabled = true }, ["target-size"] = new() { Enabled = true } },
    };

    [NeedsChromiumFact]
    public Task On_a_phone_by_day_axe_finds_nothing() => NothingFoundAsync(Looks.Phone(), "phone-light");

    [NeedsChromiumFact]
    public Task On_a_phone_by_night_axe_finds_nothing() => NothingFoundAsync(Looks.Phone(ColorScheme.Dark), "phone-dark");

    [NeedsChromiumFact]
    public Task On_a_laptop_by_day_axe_finds_nothing() => NothingFoundAsync(Looks.Laptop(), "laptop-light");

    [NeedsChromiumFact]
    public Task On_a_laptop_by_night_axe_finds_nothing() => NothingFoundAsync(Looks.Laptop(ColorScheme.Dark), "laptop-dark");

    [NeedsChromiumFact]
    public async Task What_is_pressed_is_never_smaller_than_a_thumb()
    {
        await using var visit = await bench.VisitAsync(Looks.Phone());
        var small = new List<string>();
        await Tour.WalkAsync(visit, async name => small.AddRange((await visit.Page.EvaluateAsync<string[]>(SmallTargets)).Select(target => $"{name}: {target}")));
        Assert.True(small.Count == 0, string.Join("\n", small));
    }

    [NeedsChromiumFact]
    public Task At_320_pixels_nothing_scrolls_sideways() => NothingWideAsync(Looks.Narrow());

    [NeedsChromiumFact]
    public Task At_twice_the_size_nothing_scrolls_sideways() => NothingWideAsync(Looks.Zoomed());

    /// <summary>Who asks for less motion sees none.</summary>
    [NeedsChromiumFact]
    public async Task Nothing_moves_for_those_who_asked_for_that()
    {
        await using var visit = await bench.VisitAsync(Looks.Phone());
        var moving = new List<string>();
        await Tour.WalkAsync(visit, async name => moving.AddRange((await visit.Page.EvaluateAsync<string[]>(Moving)).Select(one => $"{name}: {one}")));
        Assert.True(moving.Count == 0, string.Join("\n", moving));
        await visit.Page.EmulateMediaAsync(new() { ReducedMotion = ReducedMotion.NoPreference });
        Assert.NotEmpty(await visit.Page.EvaluateAsync<string[]>(Moving));
    }

    /// <summary>12 mm to press and 2 mm between, in the millimetres of CSS; those of a phone's glass are about a third smaller.</summary>
    [NeedsChromiumFact]
    public async Task The_ways_under_the_thumb_are_wide_and_apart()
    {
        await using var visit = await bench.VisitAsync(Looks.Phone());
        var boxes = await visit.Page.EvaluateAsync<double[][]>("() => [...document.querySelectorAll('.ways a')].map(way => way.getBoundingClientRect()).map(box => [box.left, box.right, box.height])");
        Assert.Equal(5, boxes.Length);
        Assert.All(boxes, box => Assert.True(Math.Min(box[1] - box[0], box[2]) >= 12 * PixelsPerMillimetre, string.Join(' ', box)));
        Assert.All(boxes.Zip(boxes.Skip(1)), pair => Assert.True(pair.Second[0] - pair.First[1] >= 2 * PixelsPerMillimetre - 0.1, $"{pair.First[1]} {pair.Second[0]}"));
    }

    private const double PixelsPerMillimetre = 96 / 25.4;

    private async Task NothingWideAsync(BrowserNewContextOptions screen)
    {
        await using var visit = await bench.VisitAsync(screen);
        var wide = new List<string>();
        await Tour.WalkAsync(visit, async name =>
        {
            if (await visit.Page.EvaluateAsync<int>("document.scrollingElement.scrollWidth") is var width && width > screen.ViewportSize!.Width)
                wide.Add($"{name}: {width}");
        });
        Assert.True(wide.Count == 0, string.Join("\n", wide));
    }

    private const string Moving = """
        () => [...document.querySelectorAll('body *')].filter(one => {
          const style = getComputedStyle(one);
          return style.animationName !== 'none' || style.transitionDuration.split(',').some(time => parseFloat(time) > 0);
        }).map(one => one.outerHTML.slice(0, 80))
        """;

    private async Task NothingFoundAsync(BrowserNewContextOptions screen, string called)
    {
        await using var visit = await bench.VisitAsync(screen);
        var found = new List<string>();
        await Tour.WalkAsync(visit, async name =>
        {
            await Pictures.TakeAsync(visit.Page, $"{name}-{called}");
            var result = await visit.Page.RunAxe(_rules);
            found.AddRange(result.Violations.SelectMany(violation => violation.Nodes.Select(node => $"{name}: {violation.Id}: {node.Html} {string.Join(' ', node.Any.Select(check => check.Message))}")));
        });
        Assert.True(found.Count == 0, string.Join("\n", found));
        Assert.True(!visit.Complaints.Any(), string.Join("\n", visit.Complaints));
    }

    private const string SmallTargets = """
        () => [...document.querySelectorAll('button, .button, input:not([type=checkbox]), select, summary, nav a, .check')]
          .filter(one => one.checkVisibility())
          .map(one => [one, one.getBoundingClientRect()])
          .filter(([, box]) => box.width < 48 || box.height < 48)
          .map(([one, box]) => `${one.outerHTML.slice(0, 120)} ${box.width}×${box.height}`)
        """;
}
