using Refettle.Access;
using Refettle.Peers.Cars;

namespace Refettle.Solvers.Tests.AnswerSets;

/// <summary>Whole cars against clasp, which is given the access model and the car in its own words.</summary>
public sealed class CarAgreementTests
{
    private const int Cars = 300;

    [ClaspFact]
    public void Random_cars_cost_the_same()
    {
        var planner = new AccessPlanner(UnderTest.Make());
        for (var seed = 0; seed < Cars; seed++)
        {
            var shape = new CarShape((CarKind)(seed % 3), 20 + seed % 11, seed);
            var car = WithRareParts(CarGenerator.Make(shape), seed);
            var question = new Question
            { Goals = CarGenerator.Goals(shape, 1 + seed % 4), Without = seed % 5 == 0 ? [$"p{seed % 20}"] : [] };
            var plan = planner.Reach(car, question);
            var least = Clasp.Least(CarProgram.Of(car, question));
            Assert.True(least == (plan.Status == PlanStatus.Impossible ? null : (long)(plan.Cost.Total.Value * 100)),
                $"{car.Name}: clasp {least}, plan {plan.Status} {plan.Cost.Total.Value}");
            Assert.NotEqual(PlanStatus.Feasible, plan.Status);
        }
    }

    /// <summary>Every fourth car has a few parts that there is no other of.</summary>
    private static Car WithRareParts(Car car, int seed) => seed % 4 != 0 ? car : car with
    {
        Structure = car.Structure with
        {
            Parts = car.Structure.Parts
                .Select((part, index) => index % 3 == 2 ? part with { Scarcity = Scarcity.Unique } : part).ToValueList(),
        },
    };
}
