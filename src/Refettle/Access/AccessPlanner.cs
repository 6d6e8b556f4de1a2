using Refettle.Access.Derivation;
using Refettle.Access.Ordering;

namespace Refettle.Access;

/// <summary>Answers what has to come off, by a least-cost derivation put in order.</summary>
/// <param name="solver">Finds the least cost. <see cref="ReducedSolver"/> alone proves small questions and works in a browser.</param>
public sealed class AccessPlanner(IDerivationSolver solver) : IAccessPlanner
{
    public Plan Reach(Car car, Question question, CancellationToken cancel = default) =>
        Reach(new CarStanding(car), question, cancel);

    public (Cost Cost, bool Proven)? Price(Car car, Question question, CancellationToken cancel = default)
    {
        var compilation = Compilation.Of(new CarStanding(car), question);
        var answer = solver.Solve(compilation.Problem, cancel);
        return answer.WayOf is null ? null : (compilation.CostOf(answer, car.Settings), answer.IsOptimal);
    }

    public WithinAnswer Within(Car car, Question question, int most = 20, CancellationToken cancel = default)
    {
        var plan = Reach(car, question, cancel);
        return new(plan, new Surroundings(solver, car, question, plan).Cheapest(most, cancel));
    }

    public ValueList<OtherPlan> Others(Car car, Question question, int most = 3, CancellationToken cancel = default)
    {
        var standing = new CarStanding(car);
        var compilation = Compilation.Of(standing, question);
        var best = solver.Solve(compilation.Problem, cancel);
        if (best.WayOf is null)
            return [];
        var others = Alternatives.Of(compilation.Problem, best, IsDifferent, solver, most, cancel).ToList();
        if (others.Count == 0)
            others = [.. Alternatives.Of(compilation.Problem, best, _ => true, solver, most, cancel)];
        var bestPlan = PlanOf(standing, question, compilation, best);
        return others.Select(other => Difference.Between(bestPlan, PlanOf(standing, question, compilation, other))).ToValueList();

        // Another spanner on the same bolt is hardly another plan; a part, unit or state more or less is, and so is what gets destroyed.
        bool IsDifferent(int fact) => fact < compilation.Facts.Count && IsDifferentWork(fact);

        bool IsDifferentWork(int fact) => compilation.Facts[fact].Kind is FactKind.Off or FactKind.State || Destroys(fact);

        bool Destroys(int fact)
        {
            foreach (var way in compilation.Problem.WaysOf(fact))
            {
                if (compilation.Ways[way].Way?.Destroys.Count > 0)
                    return true;
            }

            return false;
        }
    }

    public Comparison Compare(Car car, Question first, ValueList<Fact> second, CancellationToken cancel = default)
    {
        var one = Reach(car, first, cancel);
        var two = Reach(car, first with { Goals = second }, cancel);
        var both = Reach(car, first with { Goals = first.Goals.Concat(second).Distinct().ToValueList() }, cancel);
        var isPossible = new[] { one, two, both }.All(plan => plan.Status != PlanStatus.Impossible);
        return new(one, two, both, isPossible ? one.Cost.Total + two.Cost.Total - both.Cost.Total : null);
    }

    private Plan Reach(CarStanding standing, Question question, CancellationToken cancel)
    {
        var compilation = Compilation.Of(standing, question);
        var answer = solver.Solve(compilation.Problem, cancel);
        return answer.WayOf is null
            ? new() { Question = question, Status = PlanStatus.Impossible, Obstacle = Obstacles.Of(standing, question, solver, cancel) }
            : PlanOf(standing, question, compilation, answer);
    }

    /// <summary>The plan that an answer stands for, put in order and replayed.</summary>
    internal static Plan PlanOf(CarStanding standing, Question question, Compilation compilation, DerivationAnswer answer)
    {
        var builder = new PlanBuilder(standing);
        var steps = builder.Steps(PlanOrder.Of(standing, compilation.Chosen(answer), question.Goals));
        var plan = new Plan
        {
            Question = question,
            Status = answer.IsOptimal ? PlanStatus.Optimal : PlanStatus.Feasible,
            Cost = steps.Aggregate(Cost.Nothing, (sum, step) => sum + step.Cost),
            Bound = new(answer.Bound / 100m),
            Steps = steps,
            ExtraStanceChanges = builder.ExtraStanceChanges,
        };
        var faults = PlanCheck.Of(standing.Car, plan);
        return faults.Count == 0 ? plan : throw new InvalidOperationException("The plan does not replay: " + faults[0]);
    }
}
