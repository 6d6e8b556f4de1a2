using Refettle.Access.Derivation;

namespace Refettle.Access;

/// <summary>What else is near once a plan is carried out, and what it costs on top.</summary>
internal sealed class Surroundings(IDerivationSolver solver, Car car, Question question, Plan plan)
{
    /// <summary>The cheapest further goals, priced exactly; candidates are picked by an estimate that shares nothing.</summary>
    public ValueList<Extra> Cheapest(int most, CancellationToken cancel)
    {
        if (plan.Status == PlanStatus.Impossible)
            return [];
        var after = new CarStanding(AfterPlan.Of(car, plan));
        var wanted = Candidates(after).Where(fact => !after.IsTrue(fact)).ToValueList();
        if (wanted.Count == 0)
            return [];
        var compilation = Compilation.Of(after, question with { Goals = wanted });
        var alone = CheapestAlone.Of(compilation.Problem);
        return wanted.Select((fact, number) => (fact, estimate: alone.Cost[number]))
            .Where(pair => pair.estimate < long.MaxValue)
            .OrderBy(pair => pair.estimate).ThenBy(pair => pair.fact).Take(most * 2)
            .Select(pair => Price(after, pair.fact, cancel)).OfType<Extra>()
            .OrderBy(extra => extra.Cost.Total.Value).ThenBy(extra => extra.Fact).Take(most).ToValueList();
    }

    private static IEnumerable<Fact> Candidates(CarStanding after) =>
        after.Parts.Values.Where(part => !part.Fixed).Select(part => Fact.Off(part.Id))
            .Concat(after.Spaces.Keys.Select(Fact.Reach));

    private Extra? Price(CarStanding after, Fact fact, CancellationToken cancel)
    {
        var compilation = Compilation.Of(after, question with { Goals = [fact] });
        var answer = solver.Solve(compilation.Problem, cancel);
        return answer.WayOf is null
            ? null
            : new(fact, Wording.NameOf(fact, after), compilation.CostOf(answer, car.Settings), answer.IsOptimal);
    }
}
