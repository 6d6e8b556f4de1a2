using Refettle.Bench.Limits;
using Refettle.Judging;

namespace Refettle.Tests.Judging;

public sealed class MeasuringTests
{
    /// <summary>Spec 10 ± 1, U 0.2 (ILAC-G8 inputs): pass from 9.2 to 10.8 at r = 1, 9.166 to 10.834 at r = 0.83 (ISO
    /// 14253-1:2017), 9.3 to 10.7 at 1.5.</summary>
    [Theory]
    [InlineData(10.79, 1, Decision.Pass)]
    [InlineData(10.81, 1, Decision.ConditionalPass)]
    [InlineData(11.01, 1, Decision.ConditionalFail)]
    [InlineData(11.21, 1, Decision.Fail)]
    [InlineData(9.21, 1, Decision.Pass)]
    [InlineData(9.19, 1, Decision.ConditionalPass)]
    [InlineData(10.83, 0.83, Decision.Pass)]
    [InlineData(10.84, 0.83, Decision.ConditionalPass)]
    [InlineData(10.69, 1.5, Decision.Pass)]
    [InlineData(10.71, 1.5, Decision.ConditionalPass)]
    public void The_guard_band_is_that_of_the_guide(double value, double guard, Decision expected)
    {
        // A step of 0.2·√3 has u = 0.1, U = 0.2.
        var finding = Of([(decimal)value], resolution: (decimal)(0.2 * Math.Sqrt(3)));
        Assert.Equal(expected, Measuring.Of(finding, [new("part hub", "play", 9, 11, "mm", Origin.Maker, "p. 12")], guard).Decision);
    }

    /// <summary>JCGM 106:2012 7.4: y 13.6, u 1.8, limits 12.5 and 16.3 give 0.6626.</summary>
    [Fact]
    public void The_chance_to_be_within_is_that_of_the_published_example() =>
        Assert.Equal(0.662630,
            Measuring.Of(Of([13.6m], resolution: (decimal)(1.8 * 2 * Math.Sqrt(3))),
                [new("part hub", "play", 12.5m, 16.3m, "mm", Origin.Maker, null)], guard: 0).Within!.Value, 5);

    /// <summary>u from repeats is s/√n (JCGM 100, 4.2.3), here by hand: 1, 2, 3 → s = 1, u = 1/√3.</summary>
    [Fact]
    public void Repeats_and_the_instruments_step_both_count()
    {
        Assert.Equal(1 / Math.Sqrt(3), Measuring.Uncertainty(Of([1, 2, 3], null).Reading!)!.Value, 12);
        Assert.Equal(Math.Sqrt((1 / 3.0) + (0.25 / 3)), Measuring.Uncertainty(Of([1, 2, 3], 1).Reading!)!.Value, 12);
        Assert.Null(Measuring.Uncertainty(Of([1], null).Reading!));
    }

    [Fact]
    public void Without_a_limit_it_says_so_and_offers_the_form_of_the_test()
    {
        var answer = Measuring.Of(Of([0.4m], 0.01m), []);
        Assert.Null(answer.Decision);
        Assert.Contains("No limit is known", answer.Says, StringComparison.Ordinal);
        Assert.Contains("dial gauge", answer.Says, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_is_decided_while_nobody_knows_how_sure_the_reading_is() =>
        Assert.Null(Measuring.Of(Of([0.4m], null), [new("part hub", "play", null, 0.5m, "mm", Origin.Maker, null)]).Decision);

    /// <summary>What the reading is worth is unknown; that it is past the limit is not.</summary>
    [Fact]
    public void Past_its_limit_a_part_is_bad_although_nobody_knows_how_sure_the_reading_is()
    {
        Limit most = new("part hub", "play", null, 0.5m, "mm", Origin.Maker, null);
        var past = Measuring.Of(Of([0.6m], null), [most]);
        Assert.True(past.IsBeyond);
        Assert.StartsWith("As it reads it is past the limit", past.Says, StringComparison.Ordinal);
        Assert.False(Measuring.Of(Of([0.5m], null), [most]).IsBeyond);
        Assert.True(Measuring.Of(Of([0.6m], 0.01m), [most]).IsBeyond);
        var car = new Car { Id = "c", Name = "C", Findings = [Of([0.6m], null)], Limits = [most] };
        Assert.Equal(Severeness.Bad, Condition.Of(car, "part hub").Worst);
    }

    [Fact]
    public void A_limit_in_another_unit_is_converted_and_one_of_another_kind_refused()
    {
        var finding = Of([0.4m], 0.01m);
        Assert.Equal(Decision.Pass, Measuring.Of(finding, [new("part hub", "play", null, 0.02m, "in", Origin.Maker, null)]).Decision);
        Assert.Null(Measuring.Of(finding, [new("part hub", "play", null, 5, "N·m", Origin.Maker, null)]).Decision);
    }

    private static Finding Of(ValueList<decimal> values, decimal? resolution) =>
        new() { Of = "part hub", Scale = "ball-joint", Reading = new("play", values, "mm", "dial gauge", resolution) };
}
