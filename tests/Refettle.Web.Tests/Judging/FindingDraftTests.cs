using Refettle.Web.Judging;

namespace Refettle.Web.Tests.Judging;

public sealed class FindingDraftTests
{
    private static readonly Part Joint = new() { Id = "rl-ball-joint", Name = "Rear left ball joint" };

    [Fact]
    public void One_word_of_each_scale_is_kept_and_a_second_tap_takes_it_back()
    {
        var draft = new FindingDraft(Joint);
        draft.Tap("ball-joint", "smooth");
        draft.Tap("ball-joint", "play");
        draft.Tap("rust", "C");
        draft.Tap("rust", "C");
        var found = Assert.Single(draft.Read().Value);
        Assert.Equal(("part rl-ball-joint", "ball-joint", "play"), (found.Of, found.Scale, found.Word));
    }

    [Fact]
    public void Readings_take_the_unit_of_their_test()
    {
        var draft = new FindingDraft(Joint) { What = "play", Values = "0.42 0,44", Step = "0.01", Instrument = "dial gauge" };
        var reading = Assert.Single(draft.Read().Value).Reading!;
        Assert.Equal([0.42m, 0.44m], reading.Values);
        Assert.Equal(("mm", 0.01m, "dial gauge"), (reading.Unit, reading.Resolution, reading.Instrument));
    }

    [Theory]
    [InlineData("", "")]
    [InlineData("play", "")]
    [InlineData("play", "much")]
    public void What_is_no_finding_says_why(string what, string values)
    {
        var read = new FindingDraft(Joint) { What = what, Values = values }.Read();
        Assert.False(read.IsGood);
        Assert.NotEmpty(read.Faults[0].Mend);
    }
}
