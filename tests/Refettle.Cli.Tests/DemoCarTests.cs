using System.Text.Json;

namespace Refettle.Cli.Tests;

/// <summary>What a mechanic would look for in the demo cars. Common practice, no source, unless a test names one.</summary>
public sealed class DemoCarTests(DemoCars cars) : IClassFixture<DemoCars>
{
    private static readonly string[] _sparks = ["cut-off wheel", "grinder", "flame", "torch", "weld"];

    [Fact]
    public void The_rear_axle_waits_for_other_assemblies_and_is_held_up_before_it_is_loose()
    {
        var plan = cars.AskWhole("reach", "off(rear-axle)");
        var facts = DemoCars.Facts(plan);
        Assert.Equal("optimal", plan.GetProperty("status").GetString());
        Assert.Contains("off(boot-trim-left)", facts);
        Assert.Contains("off(tow-bar)", facts);
        Assert.Contains("off(exhaust-rear)", facts);
        Assert.True(Array.IndexOf(facts, "off(tow-bar)") < Array.IndexOf(facts, "off(exhaust-rear)"));
        Assert.Contains(Props(plan), prop => prop.Contains("axle", StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void What_was_done_before_is_not_done_again()
    {
        var facts = DemoCars.Facts(cars.Ask("reach", "off(rear-axle)"));
        Assert.DoesNotContain("off(tow-bar)", facts);
        Assert.DoesNotContain("off(rl-wheel)", facts);
        Assert.Contains("off(rr-wheel)", facts);
    }

    [Fact]
    public void What_still_holds_the_rear_axle_are_springs_dampers_shaft_and_brakes()
    {
        var joints = cars.Ask("holds", "rear-axle").GetProperty("joints").EnumerateArray()
            .Select(joint => joint.GetProperty("joint").GetString()).ToArray();
        Assert.Contains("rl-u-bolt-nuts", joints);
        Assert.Contains("rr-damper-lower-bolt", joints);
        Assert.Contains("axle-breather-thread", joints);
    }

    [Fact]
    public void The_heater_core_comes_out_with_the_dash_and_the_box_is_not_sawn_open_for_it()
    {
        var plan = cars.Ask("reach", "free(heater-core)");
        var facts = DemoCars.Facts(plan);
        Assert.Contains("off(dash)", facts);
        Assert.True(Array.IndexOf(facts, "state(airbags-safe)") < Array.IndexOf(facts, "open(airbag-plug)"));
        Assert.DoesNotContain("heater-box", Destroyed(plan));
        Assert.Equal(60, plan.GetProperty("cost").GetProperty("unique").GetDecimal());
    }

    [Fact]
    public void With_the_cross_tube_left_alone_the_only_way_to_the_core_saws_the_heater_box() =>
        Assert.Contains("heater-box", Destroyed(cars.Ask("reach", "free(heater-core)", "--without", "cross-tube")));

    [Fact]
    public void Engine_and_gearbox_wanted_together_leave_in_one_piece() =>
        Assert.Contains("off(engine-and-gearbox)", DemoCars.Facts(cars.Ask("reach", "off(engine)", "off(gearbox)")));

    [Fact]
    public void Shackle_bolts_rusted_into_their_sleeves_are_not_undone_with_a_spanner() =>
        Assert.All(cars.Estate.Joints.Where(joint => joint.Id.EndsWith("shackle-upper", StringComparison.Ordinal)),
            joint => Assert.DoesNotContain(joint.Ways, way => way.Tool.Contains("spanner", StringComparison.Ordinal)));

    /// <summary>Petrol and sources of ignition are kept apart: HSE advice for garages, as summarised by insurers; tank off rather than
    /// drained, because an empty one is full of vapour.</summary>
    [Fact]
    public void No_way_with_sparks_or_flame_near_the_tank_leaves_it_on_the_car()
    {
        Assert.All(Hot(cars.Estate), hot => Assert.Contains(Fact.Off("fuel-tank"), hot.Way.Clear));
        Assert.All(Hot(cars.Saloon), hot => Assert.Contains(Fact.Off("fuel-tank"), hot.Way.Clear));
        Assert.NotEmpty(Hot(cars.Estate));
    }

    [Fact]
    public void The_saloon_is_a_smaller_car_of_the_same_kits()
    {
        Assert.InRange(cars.Saloon.Parts.Count, 100, cars.Estate.Parts.Count - 100);
        Assert.True(cars.Estate.SubAssemblies.Count >= 50);
        Assert.True(cars.Estate.Joints.Count(joint => joint.Ways.Count > 1) >= 200);
    }

    /// <summary>Ways with sparks or flame on the car, behind the front axle.</summary>
    private static IEnumerable<(Joint Joint, Way Way)> Hot(Structure car)
    {
        var zones = car.Parts.ToDictionary(part => part.Id, part => part.Zone);
        return from joint in car.Joints
               where joint.Holds.Select(part => zones[part])
                   .Any(zone => zone is "underbody" or "rear-end" or "corner-rl" or "corner-rr" or "doors")
               from way in joint.Ways
               where way.Where == WorkPlace.OnCar && _sparks.Any(spark => way.Tool.Contains(spark, StringComparison.Ordinal))
               select (joint, way);
    }

    private static string[] Props(JsonElement plan) =>
        [.. plan.GetProperty("steps").EnumerateArray().Where(step => step.TryGetProperty("prop", out _))
            .Select(step => step.GetProperty("prop").GetString()!)];

    private static string[] Destroyed(JsonElement plan) =>
        [.. plan.GetProperty("steps").EnumerateArray().SelectMany(step => step.GetProperty("destroys").EnumerateArray())
            .Select(part => part.GetString()!)];
}
