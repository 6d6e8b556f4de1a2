using Bunit;
using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Tests.Access;
using Refettle.Web.Pieces;
using Refettle.Web.Steps;
using Refettle.Web.Words;

namespace Refettle.Web.Tests.Steps;

/// <summary>Every caution of a plan's steps, those without work among them, is drawn at a step that is
/// listed. Common practice, no source: a warning that is not shown warns nobody.</summary>
public sealed class StepCautionsTests : BunitContext
{
    private static readonly AccessPlanner _planner = new(new ReducedSolver());

    [Fact]
    public void Of_random_cars()
    {
        var shown = 0;
        for (var seed = 0; seed < 25; seed++)
        {
            var car = HotCars.Make(seed);
            var plan = _planner.Reach(car, RandomCars.Ask(car, seed));
            var drawn = ListedStep.Of(plan).Select(listed => (listed, Text: Drawn(listed, new(car)))).ToList();
            foreach (var step in plan.Steps.SelectMany((step, place) => step.Cautions.Select(caution => (place, caution))))
                Assert.True(drawn.Exists(one => one.listed.Index <= step.place
                    && one.Text.Contains(step.caution, StringComparison.Ordinal)), $"seed {seed}, step {step.place}: {step.caution}");
            shown += plan.Steps.Sum(step => step.Cautions.Count);
        }

        Assert.True(shown > 100, $"{shown}");
    }

    private string Drawn(ListedStep listed, CarLookup car) =>
        System.Net.WebUtility
            .HtmlDecode(Render<StepNotes>(
                made => made.Add(one => one.Step, listed.Step).Add(one => one.Cautions, listed.Cautions).Add(one => one.Car, car)).Markup);
}
