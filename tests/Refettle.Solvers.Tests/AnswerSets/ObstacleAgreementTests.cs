using Refettle.Access;
using Refettle.Peers.Cars;

namespace Refettle.Solvers.Tests.AnswerSets;

/// <summary>Why nothing works, against clasp: the fewest things to allow.</summary>
public sealed class ObstacleAgreementTests
{
    [ClaspFact]
    public void The_fewest_permissions_are_named()
    {
        var planner = new AccessPlanner(UnderTest.Make());
        var met = 0;
        for (var seed = 0; seed < 40; seed++)
        {
            var shape = new CarShape((CarKind)(seed % 3), 20, seed);
            var car = CarGenerator.Make(shape);
            var untouched = Enumerable.Range(0, 4).Select(i => $"p{(seed + i * 5) % 20}").ToValueList();
            var question = new Question { Goals = CarGenerator.Goals(shape, 2), Without = untouched };
            if (planner.Reach(car, question).Obstacle is not { } obstacle)
                continue;
            met++;
            Assert.True(obstacle.Proven);
            Assert.True(Clasp.Least(CarProgram.OfPermissions(car, question)) == obstacle.Forbidden.Count,
                $"seed {seed}: {obstacle.Forbidden}");
        }

        Assert.True(met > 20, $"only {met} questions had no answer");
    }
}
