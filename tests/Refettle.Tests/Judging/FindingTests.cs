using Refettle.Judging;
using Refettle.Logbook;
using Refettle.Tests.Logbook;

namespace Refettle.Tests.Judging;

public sealed class FindingTests
{
    private static readonly Happening[] Opened = [new CarOpened("Heron", null, "EUR"), new StructureAdded("sheet", SmallCar.Structure, [])];

    [Fact]
    public void A_load_bearing_part_that_is_rusted_through_carries_nothing_until_it_is_found_sound_again()
    {
        Assert.Empty(Fold(Seen("perforation", "holes")).Unsound);
        Assert.Equal(["body"], Fold(Seen("perforation", "holes"), Seen("place", "structural")).Unsound);
        Assert.Empty(Fold(Seen("place", "structural"), Seen("perforation", "holes"), Seen("perforation", "none")).Unsound);
        Assert.Empty(Fold(Seen("place", "structural"), Seen("thinning", "gives"), new SoundnessJudged("body", true)).Unsound);
        Assert.Equal(["body"],
            Fold(Seen("place", "structural"), Seen("rust", "D"), new SoundnessJudged("body", false), Seen("rust", "B")).Unsound);
    }

    [Fact]
    public void A_struck_finding_no_longer_counts()
    {
        var device = new TestDevice("bench");
        Entry[] entries =
            [.. Opened.Select(device.Write), device.Write(Seen("place", "structural")), device.Write(Seen("perforation", "holes"))];
        Assert.Single(CarHistory.Of("heron", entries).Car.Unsound);
        Assert.Empty(CarHistory.Of("heron", [.. entries, device.Write(new Struck(entries[^1].Id, null))]).Car.Unsound);
    }

    [Fact]
    public void What_leaves_the_description_takes_its_findings_along()
    {
        var car = Fold(new Found(new() { Of = "part tank", Scale = "rust", Word = "C" }),
            new LimitSet(new("part tank", "wall thickness", 0.8m, null, "mm", Origin.User, null)),
            new VerdictGiven(new("tank", VerdictKind.Keep, DoneBy.Self, null)), new StructureRemoved(["part tank"]));
        Assert.Empty(car.Findings);
        Assert.Empty(car.Limits);
        Assert.Empty(car.Verdicts);
    }

    [Fact]
    public void Words_of_another_scale_and_limits_from_nowhere_are_refused()
    {
        var history = CarHistory.Of("heron", Opened.Select(new TestDevice("bench").Write));
        Assert.NotEmpty(HappeningCheck.Of(history, Seen("rust", "torn")));
        Assert.NotEmpty(HappeningCheck.Of(history, new LimitSet(new("part tank", "wall", 1, null, "mm", Origin.Default, null))));
        Assert.NotEmpty(HappeningCheck.Of(history, new BaselineTold(new("shims", null, null, []))));
        Assert.Empty(HappeningCheck.Of(history, Seen("rust", "C")));
    }

    [Fact]
    public void Every_kind_of_part_has_a_short_scale_from_good_to_bad() => Assert.All(ConditionScales.All, scale =>
    {
        Assert.InRange(scale.Words.Count, 2, 5);
        Assert.Equal(scale.Words.Count, scale.Words.DistinctBy(word => word.Word).Count());
        Assert.NotEmpty(scale.Origin);
    });

    [Theory]
    [InlineData("Rear left damper", "damper")]
    [InlineData("Lower ball joint", "ball-joint")]
    [InlineData("Spring front bush", "bush")]
    [InlineData("Wheel bearing", "bearing")]
    [InlineData("Brake hose", "hose")]
    [InlineData("Tailgate seal", "weatherstrip")]
    public void A_parts_name_tells_its_scale(string name, string scale) =>
        Assert.Equal(scale, ConditionScales.For(new() { Id = "x", Name = name })[0].Id);

    [Fact]
    public void The_list_before_the_first_bolt_is_settled_by_answers_heights_and_sharp_photos()
    {
        var car = Fold();
        Assert.Equal(BaselineItems.All.Count, Baseline.Open(car, []).Count);
        Assert.DoesNotContain(Baseline.Open(car, ["fl", "fr", "rl", "rr"]), line => line.Item.Id == BaselineItems.Heights);
        Assert.DoesNotContain(Baseline.Open(Fold(new BaselineTold(new("shims", null, "none fitted", []))), []),
            line => line.Item.Id == "shims");
    }

    private static Found Seen(string scale, string word) => new(new() { Of = "part body", Scale = scale, Word = word });

    private static Car Fold(params Happening[] happenings) =>
        CarHistory.Of("heron", Opened.Concat(happenings).Select(new TestDevice("bench").Write)).Car;
}
