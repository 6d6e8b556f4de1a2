using System.Text.Json;

namespace Refettle.Cli.Tests.Verbs;

/// <summary>What a newcomer types at the demo without arguments: each verb has something to tell, as a mechanic would have
/// it. Common practice, no source.</summary>
public sealed class DemoAnswersTests(DemoCars cars) : IClassFixture<DemoCars>
{
    [Fact]
    public void The_chosen_jobs_are_planned_before_the_meeting_and_fit_in()
    {
        var timeline = cars.Ask("timeline", "--seconds", "0");
        Assert.True(timeline.GetProperty("inTime").GetBoolean());
        Assert.InRange(Count(timeline, "tasks"), 100, 250);
        Assert.Empty(timeline.GetProperty("clashes").EnumerateArray());
        Assert.DoesNotContain(timeline.GetProperty("notes").EnumerateArray(), note => note.GetProperty("severity").GetString() != "note");
    }

    /// <summary>Neither sure nor hopeless, and it gets done some day.</summary>
    [Fact]
    public void The_date_is_in_doubt()
    {
        var forecast = cars.Ask("forecast", "--futures", "500");
        Assert.InRange(forecast.GetProperty("chanceOfDate").GetProperty("value").GetDouble(), 0.2, 0.8);
        Assert.InRange(forecast.GetProperty("unfinished").GetProperty("value").GetDouble(), 0, 0.02);
    }

    [Fact]
    public void Tonight_basket_orders_refit_and_coats_have_something_to_tell()
    {
        var tonight = cars.Ask("tonight", "--minutes", "70");
        Assert.Contains(tonight.GetProperty("offers").EnumerateArray(),
            offer => offer.GetProperty("task").GetProperty("kind").GetString() == "strip");
        var basket = cars.Ask("basket");
        Assert.NotEmpty(basket.GetProperty("purchases").EnumerateArray());
        Assert.Contains(basket.GetProperty("lines").EnumerateArray(), line => line.GetProperty("missing").GetInt32() == 0);
        Assert.Equal((2, 1), (Count(cars.Ask("orders"), "orders"), Count(cars.Ask("orders"), "outside")));
        var refit = cars.Ask("refit");
        Assert.InRange(Count(refit, "steps"), 15, 40);
        Assert.Empty(refit.GetProperty("leftover").EnumerateArray());
        Assert.InRange(Count(cars.Ask("coating", "plan"), "sessions"), 2, 4);
    }

    /// <summary>The timeline names the order; what came of it only the books know. A task of a job has no place in them.</summary>
    [Theory]
    [InlineData("order.harbour-rubber", true)]
    [InlineData("order.dampers", false)]
    public void An_order_that_is_marked_is_told_how_it_is_booked(string order, bool isTold)
    {
        foreach (var (mark, isSaid) in new[] { ("done", isTold), ("begun", isTold), ("ahead", false) })
        {
            cars.Tell("task", mark, order);
            Assert.Equal(isSaid, cars.Aside.Contains("refettle orders place SUPPLIER", StringComparison.Ordinal));
            cars.Tell("strike", "last");
        }
    }

    /// <summary>What follows from what was done is not told again, an end that many cars lack is none, and a number has its name.</summary>
    [Fact]
    public void Nothing_is_told_twice_or_by_number_alone()
    {
        var shown = cars.Tell("show");
        Assert.Contains("0 loose ends", shown, StringComparison.Ordinal);
        Assert.Contains("off(tow-bar)", shown, StringComparison.Ordinal);
        Assert.DoesNotContain("free(tow-bar)", shown, StringComparison.Ordinal);
        Assert.DoesNotContain("free(rl-wheel)", shown, StringComparison.Ordinal);
        Assert.Contains("77-118 Differential gasket", cars.Tell("orders"), StringComparison.Ordinal);
        Assert.Contains("every figure is entered", cars.Tell("product", "list"), StringComparison.Ordinal);
    }

    private static int Count(JsonElement answer, string list) => answer.GetProperty(list).GetArrayLength();
}
