using Refettle.Access;
using Refettle.Access.Derivation;

namespace Refettle.Discovery;

/// <summary>Finds what else is worth doing once a car is opened up, and prices it as the access planner does: exactly.</summary>
public sealed class SinceOpenPlanner(IAccessPlanner planner)
{
    /// <summary>Which are priced is picked by an estimate; so many times as many are priced as are shown.</summary>
    private const int Spare = 2;

    public SinceOpenAnswer Of(SinceOpenQuestion question, CancellationToken cancel = default)
    {
        var plan = planner.Reach(question.Car, new() { Goals = question.Goals }, cancel);
        if (plan.Status == PlanStatus.Impossible)
            return new(plan, [], 0);
        var picked = Picked(question, plan);
        var priced = picked.Select(one => Price(question, plan, one, cancel)).OfType<Offer>().ToList();
        var open = cancel.IsCancellationRequested ? picked.Count - priced.Count : 0;
        return new(plan,
            priced.Where(offer => offer.Spares > Minutes.Zero).OrderByDescending(offer => offer.Spares.Value)
                .ThenBy(offer => offer.Job.Id, StringComparer.Ordinal).Take(question.Most).ToValueList(), open);
    }

    private Offer? Price(SinceOpenQuestion question, Plan plan, Candidate one, CancellationToken cancel)
    {
        if (cancel.IsCancellationRequested)
            return null;
        var both = planner.Price(question.Car, new() { Goals = question.Goals.Concat(one.Job.Goals).Distinct().ToValueList() }, cancel);
        var alone = planner.Price(question.Car, new() { Goals = one.Job.Goals }, cancel);
        return both is { } with && alone is { } later
            ? new(one.Job, one.Source, with.Cost - plan.Cost, later.Cost, with.Proven && later.Proven && plan.Status == PlanStatus.Optimal)
            : null;
    }

    /// <summary>Those by which most is spared, were nothing shared but what the plan opens.</summary>
    private static List<Candidate> Picked(SinceOpenQuestion question, Plan plan)
    {
        var candidates = Candidates.Of(question).ToList();
        var goals = candidates.SelectMany(one => one.Job.Goals).Distinct().ToValueList();
        if (goals.Count == 0)
            return [];
        var (now, later) = (Estimates(AfterPlan.Of(question.Car, plan), goals), Estimates(question.Car, goals));
        return candidates.Where(one => one.Job.Goals.All(goal => now.ContainsKey(goal) && later.ContainsKey(goal)))
            .OrderBy(one => one.Source == OfferSource.Reach).ThenByDescending(one => one.Job.Goals.Max(goal => later[goal] - now[goal]))
            .ThenBy(one => one.Job.Id, StringComparer.Ordinal)
            .Take(question.Most * Spare).ToList();
    }

    /// <summary>Hundredths of minutes of each goal by itself, nothing shared; those that cannot be reached are left out.</summary>
    private static Dictionary<Fact, long> Estimates(Car car, ValueList<Fact> goals)
    {
        var standing = new CarStanding(car);
        var open = goals.Where(goal => !standing.IsTrue(goal)).ToValueList();
        var estimates = goals.Except(open).ToDictionary(goal => goal, _ => 0L);
        var alone = open.Count == 0 ? [] : CheapestAlone.Of(Compilation.Of(standing, new() { Goals = open }).Problem).Cost;
        for (var number = 0; number < open.Count; number++)
        {
            if (alone[number] < long.MaxValue)
                estimates[open[number]] = alone[number];
        }

        return estimates;
    }
}
