using Refettle.Access;
using Refettle.Access.Derivation;

namespace Refettle.Tests.Access;

public sealed class PlanOutlineTests
{
    [Fact]
    public void Every_step_is_told_once_and_in_order()
    {
        for (var seed = 0; seed < 60; seed++)
        {
            var car = RandomCars.Make(seed);
            var plan = new AccessPlanner(new ReducedSolver()).Reach(car, RandomCars.Ask(car, seed));
            var lines = PlanOutline.Of(plan).Chapters.SelectMany(chapter => chapter.Lines).ToList();
            Assert.Equal(Enumerable.Range(1, lines.Count), lines.Select(line => line.Number));
            Assert.Equal(lines.Select(line => line.Index).Order(), lines.Select(line => line.Index));
            Assert.Equal(plan.Steps.Order(ByText), lines.SelectMany(line => line.Along.Prepend(line.Step)).Order(ByText));
            Assert.All(lines.SelectMany(line => line.Along), step => Assert.Equal(0, step.Cost.Total.Value));
        }
    }

    private static Comparer<Step> ByText { get; } = Comparer<Step>.Create((one, other) => one.Fact.CompareTo(other.Fact));
}
