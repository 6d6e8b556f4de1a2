using System.Text.Json;

namespace Refettle.Cli.Tests.Timeline;

/// <summary>The demo estate's timeline, as a mechanic would look it over. Common practice, no source.</summary>
public sealed class DemoTimelineTests(UnchosenCars cars) : IClassFixture<UnchosenCars>
{
    [Fact]
    public void A_sill_is_measured_and_braced_before_it_is_cut_and_sealed_before_it_is_covered()
    {
        var answer = Timeline("free(left-outer-sill)");
        string[] order = ["gaps-before.left-outer-sill-welds", "brace.left-outer-sill-welds", "strip.open.left-outer-sill-welds",
            "refit.open.left-outer-sill-welds",
            "gaps-after.left-outer-sill-welds", "unbrace.left-outer-sill-welds", "seal.left-outer-sill-welds",
            "wait.seal.left-outer-sill-welds", "refit.left-sill-cover"];
        Assert.Equal(order, Started(answer).Where(order.Contains));
        Assert.True(At(answer, "gaps-before.left-outer-sill-welds") < At(answer, TakesOff(answer, "off(fl-door)")));
        Assert.True(At(answer, "strip.fuel-tank-unit") < At(answer, "strip.open.left-outer-sill-welds"));
        Assert.True(At(answer, "refit.open.left-outer-sill-welds") < At(answer, "refit.fuel-tank-unit"));
    }

    [Fact]
    public void An_axle_that_was_out_ends_with_bleeding_ride_height_alignment_and_a_second_look()
    {
        var answer = Timeline("free(rear-axle)");
        string[] checks = ["check.bleed", "check.ride-height", "check.settle", "check.alignment", "check.road-test", "check.again"];
        Assert.Equal(checks, Started(answer).Where(id => id.StartsWith("check.", StringComparison.Ordinal)));
        Assert.Equal("check.again", Started(answer)[^1]);
    }

    [Theory]
    [InlineData("free(heater-core)")]
    [InlineData("off(engine)", "off(gearbox)")]
    [InlineData("free(rear-axle)", "free(left-outer-sill)", "free(heater-core)", "off(fuel-tank)", "free(fl-lower-arm)")]
    public void Every_timeline_replays_on_the_car(params string[] goals)
    {
        var answer = Timeline(goals);
        Assert.DoesNotContain(answer.GetProperty("notes").EnumerateArray(), note => note.GetProperty("severity").GetString() == "error");
        Assert.True(answer.GetProperty("tasks").GetArrayLength() > 10);
    }

    private JsonElement Timeline(params string[] goals) => cars.Ask(["timeline", .. goals, "--seconds", "0"]);

    private static string[] Started(JsonElement answer) =>
        [.. answer.GetProperty("tasks").EnumerateArray().Select(task => task.GetProperty("id").GetString()!)];

    private static string TakesOff(JsonElement answer, string fact) => answer.GetProperty("tasks").EnumerateArray()
        .First(task => task.GetProperty("facts").EnumerateArray().Any(one => one.GetString() == fact)).GetProperty("id").GetString()!;

    private static int At(JsonElement answer, string task) =>
        Array.IndexOf(Started(answer), task) is >= 0 and var place ? place : throw new InvalidOperationException($"no task {task}");
}
