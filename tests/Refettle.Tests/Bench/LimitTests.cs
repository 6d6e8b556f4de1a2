using CsCheck;
using Refettle.Bench.Limits;

namespace Refettle.Tests.Bench;

public sealed class LimitTests
{
    // JCGM 106 7.4 data and others, computed with Python's statistics.NormalDist; six digits.
    [Theory]
    [InlineData("value=13.6mm u=1.8mm lower=12.5mm upper=16.3mm", "0.662630")]
    [InlineData("value=-0.60deg u=0.10deg lower=-1.00deg upper=-0.50deg", "0.841313")]
    [InlineData("value=-0.75deg u=0.10deg lower=-1.00deg upper=-0.50deg", "0.987581")]
    [InlineData("value=-0.52deg u=0.10deg lower=-1.00deg upper=-0.50deg", "0.579259")]
    [InlineData("value=85um u=5um lower=80um", "0.841345")]
    [InlineData("value=85um u=0.005mm lower=80um", "0.841345")]
    public void Chance_to_conform(string inputs, string expected) => Ask.Printed(expected, Ask.Value("conformity " + inputs) / 100);

    [Fact]
    public void Least_film_for_certainty() => // NormalDist: 95 % above 80 µm with u 5 µm takes 88.224268
        Ask.Printed("88.224268", Conformity.LeastFor(80, 5, 0.95));

    // ILAC-G8 and ISO 14253-1:2017 multiples, k = 2; computed with NormalDist to the digits given.
    [Theory]
    [InlineData(0.83, 0.048457)]
    [InlineData(1, 0.022750)]
    [InlineData(1.5, 0.0013499)]
    [InlineData(3, 9.866e-10)]
    [InlineData(0, 0.5)]
    public void False_passes(double guard, double probability) => Ask.Near(probability, LimitDecision.FalsePassProbability(guard), 1e-4);

    // ILAC-G8 inputs: 10 ± 1, U 0.2; limits computed.
    [Theory]
    [InlineData("0.83", 9.166, 10.834)]
    [InlineData("1", 9.2, 10.8)]
    [InlineData("1.5", 9.3, 10.7)]
    public void Acceptance_limits(string guard, double lowest, double highest)
    {
        var line = $"limit-decision value=10mm uncertainty=0.2mm lower=9mm upper=11mm guard={guard}";
        Assert.Equal(lowest, Ask.Value(line, "lowest pass"), 9);
        Assert.Equal(highest, Ask.Value(line, "highest pass"), 9);
    }

    // Names and zones of ILAC-G8:09/2019 4.2.3.
    [Theory]
    [InlineData(10.79, "pass")]
    [InlineData(10.9, "conditional pass")]
    [InlineData(11.1, "conditional fail")]
    [InlineData(11.21, "fail")]
    [InlineData(8.7, "fail")]
    [InlineData(9.1, "conditional pass")]
    public void Decisions(double value, string verdict) =>
        Assert.Equal(verdict, Ask.Answer($"limit-decision value={value}mm uncertainty=0.2mm lower=9mm upper=11mm").Verdict);

    [Theory]
    [InlineData("limit-decision value=10mm uncertainty=0.2mm")]
    [InlineData("limit-decision value=10mm uncertainty=0.2mm lower=9N")]
    [InlineData("limit-decision value=10mm uncertainty=0mm lower=9mm")]
    [InlineData("limit-decision value=10mm uncertainty=2mm lower=9mm upper=11mm")]
    [InlineData("conformity value=10mm u=1mm lower=11mm upper=9mm")]
    public void What_cannot_be_decided_is_refused(string line) => Assert.False(Ask.Result(line).IsGood);

    [Fact]
    public void A_wider_guard_never_turns_a_fail_into_a_pass() =>
        Gen.Select(Gen.Double[-5, 5], Gen.Double[0, 1], Gen.Double[0, 1]).Sample((value, guard, more) =>
            LimitDecision.Of(value, -2, 2, guard + more) != Decision.Pass || LimitDecision.Of(value, -2, 2, guard) == Decision.Pass);
}
