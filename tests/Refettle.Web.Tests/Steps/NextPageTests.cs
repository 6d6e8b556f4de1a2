using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Logbook;
using Refettle.Server.Tests;
using Refettle.Web.Garage;
using Refettle.Web.Pages;
using Refettle.Web.Tests.Garage;

namespace Refettle.Web.Tests.Steps;

public sealed class NextPageTests : BunitContext
{
    private readonly FaultyServer _server = new();

    public NextPageTests()
    {
        Services.AddGarage(_server);
        JSInterop.Mode = JSRuntimeMode.Loose;
    }

    [Fact]
    public async Task What_is_found_too_weak_is_told_at_the_next_step_and_forbids_it_there()
    {
        var open = Services.GetRequiredService<OpenCar>();
        await open.BeginAsync(SmallCar.Id, SmallCar.Happenings);
        var page = Render<NextPage>(parameters => parameters.Add(shown => shown.Id, SmallCar.Id));
        page.WaitForState(() => open.Car is not null && !open.Opening);
        var plan = new AccessPlanner(new ReducedSolver()).Reach(open.Car!.Car, Question.For(Fact.Free("rear-axle")));
        await page.InvokeAsync(
            () => open.FollowAsync(plan with { Steps = plan.Steps.Where(step => step.Fact == Fact.State("on-stands")).ToValueList() }));
        page.WaitForAssertion(() => Assert.Contains("On stands", page.Find("h1").TextContent, StringComparison.Ordinal));
        Assert.Empty(page.FindAll("main > .caution"));

        await page.InvokeAsync(() => open.WriteAsync(new SoundnessJudged("body", false)));
        page.WaitForAssertion(() => Assert.Contains("too weak to carry it, changed since", page.Find("main > .caution").TextContent,
            StringComparison.Ordinal));
        await page.TouchAsync("button.main", element => element.ClickAsync());
        page.WaitForAssertion(() => Assert.Contains("part body must carry the car and was found unsound", page.Find(".faults").TextContent,
            StringComparison.Ordinal));
        Assert.Equal("on-wheels", open.Car.Car.Stance);
    }

    /// <summary>What is open already is not asked for again.</summary>
    [Fact]
    public async Task What_the_chosen_jobs_need_is_asked_for_in_one_tap()
    {
        var open = Services.GetRequiredService<OpenCar>();
        Job axle = new() { Id = "axle", Name = "Axle as new", Goals = [Fact.Free("rear-axle")], Wish = Wish.Must };
        await open.BeginAsync(SmallCar.Id,
            [.. SmallCar.Happenings, new JobEntered(axle),
                new JobEntered(axle with { Id = "left", Name = "Left", Goals = [Fact.Free("left-damper")], Wish = Wish.Maybe })]);
        var page = Render<NextPage>(parameters => parameters.Add(shown => shown.Id, SmallCar.Id));
        await page.TouchAsync("main button.main", element => element.ClickAsync());
        page.WaitForAssertion(() => Assert.Equal([Fact.Free("rear-axle")], open.Question!.Goals));
    }
}
