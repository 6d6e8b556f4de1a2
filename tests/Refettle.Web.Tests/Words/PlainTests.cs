using Refettle.Access;
using Refettle.Web.Words;

namespace Refettle.Web.Tests.Words;

public sealed class PlainTests
{
    [Theory]
    [InlineData(0, "0 min")]
    [InlineData(0.2, "under 1 min")]
    [InlineData(12.5, "13 min")]
    [InlineData(89, "89 min")]
    [InlineData(90, "1 h 30")]
    [InlineData(120, "2 h")]
    [InlineData(125, "2 h 05")]
    public void Times_are_said_as_a_person_would(double minutes, string said) => Assert.Equal(said, Plain.Time(new((decimal)minutes)));

    /// <summary>U+2060 forbids a break on either side: Unicode Standard Annex 14, rule LB11.</summary>
    [Fact]
    public void A_day_is_not_parted_at_its_hyphens() => Assert.Equal("Sat 2027-\u206001-\u206009", Plain.Whole("Sat 2027-01-09"));

    [Fact]
    public void What_is_not_proven_does_not_sound_proven()
    {
        var plan = new Plan
        { Question = Question.For(), Status = PlanStatus.Feasible, Bound = new(60), Cost = new(new(50), new(40), default, default) };
        Assert.DoesNotContain("Proven", Plain.Proof(plan));
        Assert.Contains("none under 60 min", Plain.Proof(plan));
        Assert.StartsWith("Proven", Plain.Proof(plan with { Status = PlanStatus.Optimal }));
    }
}
