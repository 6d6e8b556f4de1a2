using CsCheck;
using Refettle.Access;
using Refettle.Web.Drawing;

namespace Refettle.Web.Tests.Drawing;

public sealed class PictureTests
{
    private static readonly Gen<Plan> _plans = Gen.Int[0, 40].SelectMany(count =>
        Gen.Int[0, 1000].Array[count].Array[2].Select(picks => PlanOf(count, picks)));

    [Fact]
    public void Boxes_never_overlap_and_lie_on_the_sheet() => _plans.Sample(plan =>
    {
        var picture = Picture.Of(plan);
        Assert.Equal(Enumerable.Range(0, plan.Steps.Count), picture.Boxes.SelectMany(box => box.Steps).Order());
        Assert.All(picture.Boxes, box => Assert.True(
            box.Left >= 0 && box.Top >= 0 && box.Left + Picture.BoxWidth <= picture.Width
                && box.Top + Picture.BoxHeight <= picture.Height));
        foreach (var (one, other) in picture.Boxes.SelectMany(one => picture.Boxes.Where(other => other.Main > one.Main),
            (one, _) => (one, _)))
            Assert.True(Math.Abs(one.Left - other.Left) >= Picture.BoxWidth || Math.Abs(one.Top - other.Top) >= Picture.BoxHeight);
    });

    [Fact]
    public void What_waits_stands_to_the_right_of_what_it_waits_for() => _plans.Sample(plan =>
    {
        var picture = Picture.Of(plan);
        var left = picture.Boxes.Select(box => box.Left).ToArray();
        Assert.All(picture.Threads, thread => Assert.True(left[thread.Link.From] + Picture.BoxWidth < left[thread.Link.To]));
    });

    [Fact]
    public void One_plan_is_drawn_in_one_way() => _plans.Sample(plan => Assert.Equal(Picture.Of(plan), Picture.Of(plan)));

    /// <summary>Steps that each need up to two earlier ones.</summary>
    internal static Plan PlanOf(int count, int[][] picks) => new()
    {
        Question = Question.For(),
        Status = PlanStatus.Optimal,
        Steps = Enumerable.Range(0, count).Select(step => new Step
        {
            Fact = Fact.Open($"j{step}"),
            Way = "",
            Says = $"Undo {step}",
            Place = "car",
            Posture = "standing",
            Needs = picks.Where(_ => step > 0).Select(pick => Fact.Open($"j{pick[step] % Math.Max(1, step)}")).Distinct().ToValueList(),
        }).ToValueList(),
    };
}
