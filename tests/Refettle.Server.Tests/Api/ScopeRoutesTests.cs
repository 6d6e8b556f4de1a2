using System.Net;
using Refettle.Access;
using Refettle.Logbook;
using Refettle.Scope;

namespace Refettle.Server.Tests.Api;

public sealed class ScopeRoutesTests
{
    private static readonly ScopeQuestion _question = new() { PerHour = new(30), Hours = new(200) };

    private static string Path(string verb) => $"api/cars/{SmallCar.Id}/{verb}";

    [Fact]
    public async Task A_scope_is_chosen_explained_drawn_and_braked()
    {
        await using var garage = await WithJobsAsync();
        using var page = garage.Page();
        var scope = await (await page.PostJsonAsync(Path("scope"), _question)).ReadAsync<ScopeAnswer>();
        Assert.Equal(PlanStatus.Optimal, scope.Status);
        Assert.Equal(["dampers"], scope.Chosen);
        Assert.Equal(_question, scope.Question);
        var reasons = await (await page.PostJsonAsync(Path("scope/reasons"), scope with { Plan = null })).ReadAsync<ScopeReasons>();
        Assert.Equal(["axle", "dampers"], reasons.Costs.Select(cost => cost.Job).Order());
        var frontier = await (await page.PostJsonAsync(Path("scope/frontier"), new FrontierQuestion(_question, ScopeLimit.Time, 5)))
            .ReadAsync<ValueList<FrontierPoint>>();
        Assert.Equal(5, frontier.Count);
        var brake = await (await page.PostJsonAsync(Path("scope/add"), new BrakeQuestion(_question, "axle", scope.Chosen)))
            .ReadAsync<Brake>();
        Assert.Equal(ScopeLimit.Time, Assert.Single(brake.Breaches).Limit);
    }

    [Fact]
    public async Task What_cannot_be_asked_is_refused_with_the_reason()
    {
        await using var garage = await WithJobsAsync();
        using var page = garage.Page();
        Assert.Equal(HttpStatusCode.UnprocessableEntity,
            (await page.PostJsonAsync(Path("scope"), _question with { PerHour = new(0) })).StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity,
            (await page.PostJsonAsync(Path("scope/add"), new BrakeQuestion(_question, "sills", []))).StatusCode);
        Assert.Equal(HttpStatusCode.BadRequest, (await page.PostTextAsync(Path("scope"), "{}")).StatusCode);
    }

    private static async Task<TestGarage> WithJobsAsync()
    {
        var garage = await TestGarage.OpenAsync();
        garage.Logbook.Write(SmallCar.Id, new JobEntered(Job("dampers", Fact.Free("damper-left"), 300, 20)));
        garage.Logbook.Write(SmallCar.Id, new JobEntered(Job("axle", Fact.Free("rear-axle"), 900, 240)));
        return garage;
    }

    private static Job Job(string id, Fact goal, decimal worth, decimal minutes) => new()
    {
        Id = id,
        Name = id,
        Goals = [goal],
        Worth = new(worth, worth, worth, WorthUnit.Money, Origin.User),
        Work = new(minutes),
    };
}
