using System.Net;
using Refettle.Access;
using Refettle.Logbook;
using Refettle.Web.Garage;

namespace Refettle.Server.Tests.Api;

public sealed class QuestionRoutesTests
{
    private static readonly Question _axle = Question.For(Fact.Free("rear-axle"));

    private static string Path(string verb) => $"api/cars/{SmallCar.Id}/{verb}";

    [Fact]
    public async Task Reach_is_planned_on_the_car_as_its_log_tells_it()
    {
        await using var garage = await TestGarage.OpenAsync();
        using var page = garage.Page();
        var before = await (await page.PostJsonAsync(Path("reach"), _axle)).ReadAsync<Plan>();
        Assert.Equal(PlanStatus.Optimal, before.Status);

        // By hand: 2 × (nuts 5, wheel 1, damper 10, U-bolts 20), flange 16, hose 9, stands 15, axle 10.
        Assert.Equal(new Minutes(122), before.Cost.Open);

        garage.Logbook.Write(SmallCar.Id, new StepDone(Fact.Open("prop-flange"), null, null));
        var after = await (await page.PostJsonAsync(Path("reach"), _axle)).ReadAsync<Plan>();
        Assert.Equal(new Minutes(122 - 16), after.Cost.Open);
    }

    [Fact]
    public async Task Within_others_and_compare_answer_too()
    {
        await using var garage = await TestGarage.OpenAsync();
        using var page = garage.Page();
        var within = await (await page.PostJsonAsync(Path("within"), _axle)).ReadAsync<WithinAnswer>();
        Assert.Contains(within.Extras, extra => extra.Fact == Fact.Off("spring-left"));
        Assert.NotNull(await (await page.PostJsonAsync(Path("others"), _axle)).ReadAsync<ValueList<OtherPlan>>());
        var comparison = await (await page.PostJsonAsync(Path("compare"), new Pair([Fact.Free("spring-left")], [Fact.Free("damper-left")])))
            .ReadAsync<Comparison>();
        Assert.True(comparison.Shared > Minutes.Zero);
    }

    [Fact]
    public async Task A_goal_that_is_not_on_the_car_is_refused_with_its_name()
    {
        await using var garage = await TestGarage.OpenAsync();
        using var page = garage.Page();
        var response = await page.PostJsonAsync(Path("reach"), Question.For(Fact.Free("rear-axel")));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, response.StatusCode);
        Assert.Contains("rear-axel", Assert.Single((await response.ReadAsync<Problem>()).Faults!).ToString());
    }

    [Fact]
    public async Task Without_a_planner_the_server_says_so()
    {
        await using var garage = await TestGarage.OpenAsync(planner: null);
        using var page = garage.Page();
        Assert.Equal(HttpStatusCode.ServiceUnavailable, (await page.PostJsonAsync(Path("reach"), _axle)).StatusCode);
    }
}
