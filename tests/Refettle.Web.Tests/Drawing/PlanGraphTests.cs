using CsCheck;
using Refettle.Web.Drawing;

namespace Refettle.Web.Tests.Drawing;

public sealed class PlanGraphTests
{
    /// <summary>The transitive reduction has the same reachability and no link that another path makes needless
    /// (Aho, Garey and Ullman 1972); both are checked here by plain search.</summary>
    [Fact]
    public void Links_that_follow_from_others_are_left_out_and_nothing_else() =>
        Gen.Int[1, 15].SelectMany(count => Gen.Int[0, 1000].Array[count].Array[4].Select(picks => PictureTests.PlanOf(count, picks)))
            .Sample(plan =>
        {
            var full = plan.Steps.SelectMany((step, to) => step.Needs.Select(need => new Link(IndexOf(plan, need), to))).Distinct()
                .ToList();
            var drawn = PlanGraph.Of(plan).Links.ToList();
            foreach (var link in full)
                Assert.True(Reaches(drawn, link.From, link.To));
            foreach (var link in drawn)
                Assert.False(Reaches([.. drawn.Where(other => other != link)], link.From, link.To));
        });

    private static int IndexOf(Access.Plan plan, Fact fact) => plan.Steps.Select(step => step.Fact).ToList().IndexOf(fact);

    private static bool Reaches(List<Link> links, int from, int to) =>
        from == to || links.Where(link => link.From == from).Any(link => Reaches(links, link.To, to));
}
