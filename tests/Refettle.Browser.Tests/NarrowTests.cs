using Microsoft.Playwright;

namespace Refettle.Browser.Tests;

/// <summary>Every page where there is little room.</summary>
public sealed class NarrowTests(NarrowWalk walk) : IClassFixture<NarrowWalk>
{
    [NeedsChromiumFact]
    public void At_320_pixels_nothing_scrolls_sideways() => walk.IsClean(NarrowWalk.OfWidth);
}

/// <summary>Every page at twice the size, where bars that stay put take much of the window.</summary>
public sealed class ZoomedTests(ZoomedWalk walk) : IClassFixture<ZoomedWalk>
{
    [NeedsChromiumFact]
    public void At_twice_the_size_nothing_scrolls_sideways() => walk.IsClean(NarrowWalk.OfWidth);

    [NeedsChromiumFact]
    public void At_twice_the_size_Tab_comes_to_everything_and_nothing_lies_over_it() => walk.IsClean(ZoomedWalk.OfTab);
}

/// <summary>The walk over every page at its narrowest.</summary>
public class NarrowWalk : Walk
{
    internal const string OfWidth = "width";

    private protected override BrowserNewContextOptions Screen => Looks.Narrow();

    private protected override async Task LookAsync(Visit visit, string name)
    {
        if (await visit.Page.EvaluateAsync<int>("document.scrollingElement.scrollWidth") is var width && width > Screen.ViewportSize!.Width)
            Tell(OfWidth, name, [$"{width} pixels"]);
    }
}

/// <summary>The walk over every page at twice the size.</summary>
public sealed class ZoomedWalk : NarrowWalk
{
    internal const string OfTab = "tab";

    private protected override BrowserNewContextOptions Screen => Looks.Zoomed();

    private protected override async Task LookAsync(Visit visit, string name)
    {
        await base.LookAsync(visit, name);
        Tell(OfTab, name, await TabWalk.FaultsAsync(visit.Page));
    }
}
