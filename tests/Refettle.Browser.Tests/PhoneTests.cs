using Microsoft.Playwright;

namespace Refettle.Browser.Tests;

/// <summary>Every page on a phone, held in one hand.</summary>
public sealed class PhoneTests(PhoneWalk walk) : IClassFixture<PhoneWalk>
{
    [NeedsChromiumFact]
    public void Axe_finds_nothing() => walk.IsClean(PhoneWalk.OfAxe);

    [NeedsChromiumFact]
    public void Nothing_is_complained_of() => walk.IsClean(Walk.Complaint);

    [NeedsChromiumFact]
    public void All_that_is_pressed_is_a_thumb_wide_and_2_mm_apart() => walk.IsClean(PhoneWalk.OfThumb);

    [NeedsChromiumFact]
    public void Who_asks_for_less_motion_sees_none()
    {
        walk.IsClean(PhoneWalk.OfMotion);
        Assert.NotEmpty(walk.MovesWhereMotionIsWelcome);
    }
}

/// <summary>The walk over every page on a phone.</summary>
public sealed class PhoneWalk : Walk
{
    internal const string OfAxe = "axe", OfThumb = "thumb", OfMotion = "motion";

    private const string Moving = """
        () => [...document.querySelectorAll('body *')].filter(one => {
          const style = getComputedStyle(one);
          return style.animationName !== 'none' || style.transitionDuration.split(',').some(time => parseFloat(time) > 0);
        }).map(one => one.outerHTML.slice(0, 80))
        """;

    /// <summary>A check that nothing moves must be able to find what does.</summary>
    internal IReadOnlyList<string> MovesWhereMotionIsWelcome { get; private set; } = [];

    private protected override BrowserNewContextOptions Screen => Looks.Phone();

    private protected override async Task LookAsync(Visit visit, string name)
    {
        Tell(OfMotion, name, await visit.Page.EvaluateAsync<string[]>(Moving));
        if (MovesWhereMotionIsWelcome.Count == 0)
        {
            await visit.Page.EmulateMediaAsync(new() { ReducedMotion = ReducedMotion.NoPreference });
            MovesWhereMotionIsWelcome = await visit.Page.EvaluateAsync<string[]>(Moving);
            await visit.Page.EmulateMediaAsync(new() { ReducedMotion = ReducedMotion.Reduce });
        }

        Tell(OfAxe, name, await Axe.FaultsAsync(visit.Page, $"{name}-phone"));
        Tell(OfThumb, name, Thumb.Faults(await Target.AllAsync(visit.Page)));
    }
}
