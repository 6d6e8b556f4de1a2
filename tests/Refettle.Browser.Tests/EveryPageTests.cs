using Microsoft.Playwright;

namespace Refettle.Browser.Tests;

public sealed class EveryPageTests(Bench bench) : IClassFixture<Bench>
{
    [NeedsChromiumFact]
    public Task At_320_pixels_nothing_scrolls_sideways() => NothingWideAsync(Looks.Narrow());

    [NeedsChromiumFact]
    public Task At_twice_the_size_nothing_scrolls_sideways() => NothingWideAsync(Looks.Zoomed());

    /// <summary>What is pressed is never smaller than a thumb, and who asks for less motion sees none.</summary>
    [NeedsChromiumFact]
    public async Task On_a_phone_a_thumb_finds_everything_and_nothing_moves()
    {
        await using var visit = await bench.VisitAsync(Looks.Phone());
        var wrong = new List<string>();
        await Tour.WalkAsync(visit, async name =>
        {
            wrong.AddRange((await visit.Page.EvaluateAsync<string[]>(SmallTargets)).Select(target => $"{name}: small: {target}"));
            wrong.AddRange((await visit.Page.EvaluateAsync<string[]>(Moving)).Select(one => $"{name}: moves: {one}"));
        });
        Assert.True(wrong.Count == 0, string.Join("\n", wrong));
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

    private const string SmallTargets = """
        () => [...document.querySelectorAll('button, .button, input:not([type=checkbox]), select, summary, nav a, .check')]
          .filter(one => one.checkVisibility())
          .map(one => [one, one.getBoundingClientRect()])
          .filter(([, box]) => box.width < 48 || box.height < 48)
          .map(([one, box]) => `${one.outerHTML.slice(0, 120)} ${box.width}×${box.height}`)
        """;
}
