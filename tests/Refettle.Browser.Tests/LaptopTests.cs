using Microsoft.Playwright;

namespace Refettle.Browser.Tests;

/// <summary>Every page on a laptop, with and without a pointer.</summary>
public sealed class LaptopTests(LaptopWalk walk) : IClassFixture<LaptopWalk>
{
    [NeedsChromiumFact]
    public void Axe_finds_nothing() => walk.IsClean(LaptopWalk.OfAxe);

    [NeedsChromiumFact]
    public void Nothing_is_complained_of() => walk.IsClean(Walk.Complaint);

    [NeedsChromiumFact]
    public void Tab_comes_to_everything_in_its_order_is_seen_and_goes_on() => walk.IsClean(LaptopWalk.OfTab);
}

/// <summary>The walk over every page on a laptop.</summary>
public sealed class LaptopWalk : Walk
{
    internal const string OfAxe = "axe", OfTab = "tab";

    private protected override BrowserNewContextOptions Screen => Looks.Laptop();

    private protected override async Task LookAsync(Visit visit, string name)
    {
        Tell(OfAxe, name, await Axe.FaultsAsync(visit.Page, $"{name}-laptop"));
        Tell(OfTab, name, await TabWalk.FaultsAsync(visit.Page));
    }
}
