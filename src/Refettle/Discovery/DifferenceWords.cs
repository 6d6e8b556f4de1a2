using System.Globalization;
using Refettle.Access;

namespace Refettle.Discovery;

/// <summary>A difference in a line: <c>+1 link left (order by Tue 2027-04-20 at the latest), +0.3 h</c>. It has to be quick and
/// asks no timeline: the day to order by is for the day to meet, the basket's for the day of the step.</summary>
public static class DifferenceWords
{
    private const int MostNames = 3;

    public static string Of(Car car, OutlookDifference difference)
    {
        var changes = Pieces(difference.Basket).Concat(Plan(difference.Plan)).Concat(Scope(car, difference.Scope)).ToList();
        var told = changes.Count > 0 ? string.Join(", ", changes) : "nothing that is sure yet";
        return difference.IsNothing ? "Changes nothing in plan, basket and scope."
            : $"Changes{(difference.Suggested.Count == 0 ? "" : $" as suggested ({Names(difference.Suggested.Select(one => $"{one.Kind.ToString().ToLowerInvariant()} {PartName(car, one.Part)}"))}; your own word counts before)")}: {told}."
                + string.Concat(difference.NotAnew.Select(one => $" Still to be worked out: {one}."));
    }

    private static IEnumerable<string> Plan(PlanChange? plan)
    {
        if (plan is null or { IsNothing: true })
            yield break;
        if (plan.Status == PlanStatus.Impossible || plan.Was == PlanStatus.Impossible)
        {
            yield return plan.Status == plan.Was
                ? "no plan reaches it"
                : plan.Status == PlanStatus.Impossible
                ? "no plan reaches what is to be done any more"
                : "there is a plan again";
            yield break;
        }

        if (plan.Work + plan.Tries != 0)
            yield return $"{Signed((plan.Work + plan.Tries) / 60, "0.0")} h";
        else if (plan.More.Count + plan.Less.Count > 0)
            yield return "as long as before";
        if (plan.Tries != 0)
            yield return $"of that {Signed(plan.Tries, "0")} min of tries";
        if (plan.More.Count + plan.Less.Count > 0)
            yield return string.Join(" and ",
                new[] { Steps(plan.More.Count, "more"), Steps(plan.Less.Count, "less") }.Where(word => word.Length > 0));
    }

    private static string Steps(int count, string word) => count == 0 ? "" : $"{count} {(count == 1 ? "step" : "steps")} {word}";

    /// <summary>Each place once: by how many pieces its need changes, or that it has to be ordered on another day.</summary>
    private static IEnumerable<string> Pieces(BasketChange? basket)
    {
        if (basket is null)
            yield break;
        var places = basket.More.Concat(basket.Less).Select(piece => (piece.Thing, piece.What)).Distinct().ToList();
        foreach (var place in places.Take(MostNames))
        {
            var (now, was) = (basket.More.Where(piece => (piece.Thing, piece.What) == place).ToList(),
                basket.Less.Where(piece => (piece.Thing, piece.What) == place).ToList());
            var more = now.Sum(piece => piece.Count) - was.Sum(piece => piece.Count);
            yield return $"{(more == 0 ? "" : $"{Signed(more, "0")} ")}{Uncapped(place.What)}{OrderBy(now)}";
        }

        if (places.Count > MostNames)
            yield return $"{places.Count - MostNames} more in the basket";
    }

    private static string OrderBy(List<PieceAhead> now) =>
        now.Where(piece => piece.Missing > 0).Select(piece => piece.OrderBy).Min() is { } day
        ? $" (order by {day.ToString("ddd yyyy-MM-dd", CultureInfo.InvariantCulture)} at the latest)"
        : now.Count == 0 ? "" : now.All(piece => piece.Missing == 0) ? " (in hand or ordered)" : "";

    private static IEnumerable<string> Scope(Car car, ScopeChange? scope)
    {
        if (scope is null or { IsNothing: true })
            yield break;
        if (scope.Status == PlanStatus.Impossible || scope.Was == PlanStatus.Impossible)
        {
            yield return scope.Status == scope.Was
                ? "the musts do not fit"
                : scope.Status == PlanStatus.Impossible
                ? "the musts do not fit any more"
                : "the musts fit again";
            yield break;
        }

        if (Jobs(car, scope.Out) is { Length: > 0 } gone)
            yield return $"no longer worth it: {gone}";
        if (Jobs(car, scope.In) is { Length: > 0 } come)
            yield return $"worth it now: {come}";
        yield return $"the best scope {Signed(scope.Time / 60, "0.0")} h, {Signed(scope.Money, "0")} {car.Currency}";
    }

    /// <summary>What a verdict asks for is told of already.</summary>
    private static string Jobs(Car car, ValueList<string> jobs) =>
        Names(jobs.Select(id => car.Jobs.FirstOrDefault(job => job.Id == id)?.Name).OfType<string>().Select(Uncapped));

    private static string Names(IEnumerable<string> names)
    {
        var all = names.ToList();
        return string.Join(" and ", all.Take(MostNames)) + (all.Count > MostNames ? $" and {all.Count - MostNames} more" : "");
    }

    private static string PartName(Car car, string part) => Uncapped(car.Structure.PartName(part));

    private static string Uncapped(string name) =>
        name.Length > 1 && char.IsLower(name[1]) ? char.ToLowerInvariant(name[0]) + name[1..] : name;

    private static string Signed(decimal figure, string format) =>
        $"{(figure < 0 ? "−" : "+")}{Math.Abs(figure).ToString(format, CultureInfo.InvariantCulture)}";
}
