using Refettle.Access;
using Refettle.Scope;
using Refettle.Web.Scopes;

namespace Refettle.Web.Tests.Scopes;

public sealed class ScopeBoardTests
{
    private static readonly Car _car = new()
    {
        Id = "heron",
        Name = "Heron",
        Structure = new() { Parts = [new() { Id = "gearbox", Name = "Gearbox" }] },
        Jobs = [Job("clutch", Wish.Want), Job("seal", Wish.Maybe), Job("sills", Wish.Must)],
    };

    private static readonly ScopeQuestion _question = new()
    { PerHour = new(10), Hours = new(60 * 62), Budget = new(250), Until = new(42, new(60 * 80)) };

    private static readonly ScopeAnswer _answer = new()
    {
        Question = _question,
        Status = PlanStatus.Optimal,
        Chosen = ["clutch", "sills"],
        Left = [new("seal", WhyLeft.NoRoom)],
        Sum = new(900, new(240), new(600), new(300), default),
        Gain = 510,
        Bound = 510,
    };

    private static readonly ScopeBoard _board = new(_car, _question, _answer, new(
        [new("seal", false, new(30, new(22), new(48), default, default), [], Fact.Off("gearbox"))],
        [new(ScopeLimit.Time, ["clutch"], ["seal"], 70, ScopeSum.Nothing)]));

    [Fact]
    public void Limits_go_to_the_next_whole_step()
    {
        Assert.Equal(new Minutes(60 * 65), _board.WithHours(1).Hours);
        Assert.Equal(new Minutes(60 * 55), _board.WithHours(-1).Hours);
        Assert.Equal(new Money(300), _board.WithMoney(1).Budget);
        Assert.Equal(new Money(0), (_board with { Question = _question with { Budget = new(50) } }).WithMoney(-2).Budget);
        Assert.Equal(new Money(300), (_board with { Question = _question with { Budget = null } }).WithMoney(1).Budget);
    }

    [Fact]
    public void A_changed_limit_makes_the_answer_stale()
    {
        Assert.False(_board.IsStale);
        Assert.True((_board with { Question = _board.WithHours(1) }).IsStale);
    }

    [Fact]
    public void Jobs_say_what_they_take_given_the_rest_and_why_they_are_left()
    {
        Assert.Equal(["clutch", "sills"], _board.In.Select(line => line.Job.Id));
        var left = Assert.Single(_board.Out);
        Assert.Equal("+0.8 h, +22 EUR", left.Takes);
        Assert.Equal("since Gearbox is off", left.Since);
        Assert.Equal("no room beside what brings more", left.Why);
        Assert.Equal("Short of time: New clutch goes first, New seal comes in. The gain falls by 70 EUR.", Assert.Single(_board.First));
        Assert.Equal("42 days left, 80 h in spells.", _board.Day);
        Assert.Equal("Gain 510 EUR: worth 900, money 240, 15.0 h at 10.", _board.Sum);
    }

    [Fact]
    public void A_brake_says_what_breaks_and_what_would_make_room()
    {
        var brake = new Brake("seal", null, [new(ScopeLimit.Time, 63 * 60, 62 * 60), new(ScopeLimit.Day, 50, 42)], ["clutch"]);
        Assert.Equal(["That makes 63.0 h of 62.0 h.", "Its waits alone take 50 days of 42.",
            "It fits if New clutch goes: that loses least."], _board.Says(brake));
        Assert.Equal(["It fits."], _board.Says(brake with { Breaches = [] }));
        Assert.Contains("Nothing that may go makes room for it.", _board.Says(brake with { Room = null }));
    }

    [Fact]
    public void A_frontier_is_drawn_from_left_to_right_and_up()
    {
        var picture = new FrontierPicture([Point(60, 10), Point(120, 40), Point(180, 100)]);
        Assert.Equal([12, 160, 308], picture.Places.Select(place => place.X));
        Assert.Equal([168, 116, 12], picture.Places.Select(place => place.Y));
        Assert.Equal("M12 168 H160 V116 H308 V12", picture.Path);
        Assert.Equal(308, picture.X(999));
    }

    private static FrontierPoint Point(decimal limit, decimal gain) => new(limit, [], ScopeSum.Nothing, gain);

    private static Job Job(string id, Wish wish) => new() { Id = id, Name = $"New {id}", Wish = wish };
}
