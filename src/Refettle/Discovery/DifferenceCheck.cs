namespace Refettle.Discovery;

/// <summary>Adds a difference to the outlook before and compares with the outlook after; it shares nothing
/// with what made the difference.</summary>
public static class DifferenceCheck
{
    /// <summary>All that does not come out; empty when the difference is right.</summary>
    public static ValueList<Fault> Of(Outlook before, OutlookDifference difference, Outlook after) =>
        [.. Plan(before.Plan, difference.Plan, after.Plan), .. Basket(before.Basket, difference.Basket, after.Basket),
            .. Scope(before.Scope, difference.Scope, after.Scope)];

    private static IEnumerable<Fault> Plan(PlanAhead? before, PlanChange? change, PlanAhead? after)
    {
        if (IsMissing(before, change, after))
            yield return Wrong("plan", "it was worked out and is not told, or told and not worked out");
        if (before is null || change is null || after is null)
            yield break;
        if (!Comes(before.Steps, change.Less, change.More, after.Steps))
            yield return Wrong("steps", "those before, less those that go, with those that come, are not those after");
        if (before.Total.Value + change.Work + change.Tries != after.Total.Value || before.Tries.Value + change.Tries != after.Tries.Value)
            yield return Wrong("minutes", $"{before.Total} and {change.Work + change.Tries} are not {after.Total}");
        if (change.Was != before.Status || change.Status != after.Status)
            yield return Wrong("plan", "how good it is known to be is told wrongly");
    }

    private static IEnumerable<Fault> Basket(BasketAhead? before, BasketChange? change, BasketAhead? after)
    {
        if (IsMissing(before, change, after))
            yield return Wrong("basket", "it was worked out and is not told, or told and not worked out");
        if (before is not null && change is not null && after is not null && !Comes(before.Pieces, change.Less, change.More, after.Pieces))
            yield return Wrong("basket", "the pieces before, less those that go, with those that come, are not those after");
    }

    private static IEnumerable<Fault> Scope(ScopeAhead? before, ScopeChange? change, ScopeAhead? after)
    {
        // Where nothing that it depends on changed it is not worked out at all.
        if (IsMissing(before, change, after) && !(before is null && after is null && change == ScopeChange.None))
            yield return Wrong("scope", "it was worked out and is not told, or told and not worked out");
        if (before is null || change is null || after is null)
            yield break;
        if (!Comes(before.Jobs, change.Out, change.In, after.Jobs) || change.Was != before.Status || change.Status != after.Status)
            yield return Wrong("jobs", "those before, less those that go, with those that come, are not those after");
        if (before.Time.Value + change.Time != after.Time.Value || before.Money.Amount + change.Money != after.Money.Amount
            || before.Gain + change.Gain != after.Gain)
            yield return Wrong("scope", "time, money or gain do not come out");
    }

    private static bool IsMissing(object? before, object? change, object? after) =>
        (before is not null && after is not null) != (change is not null);

    /// <summary>What goes has to be there, and nothing may be left over on either side.</summary>
    private static bool Comes<T>(ValueList<T> before, ValueList<T> goes, ValueList<T> comes, ValueList<T> after)
    {
        var left = before.ToList();
        if (!goes.All(left.Remove))
            return false;
        left.AddRange(comes);
        return after.All(left.Remove) && left.Count == 0;
    }

    private static Fault Wrong(string place, string found) =>
        new($"difference {place}", found, "This is a fault of the program: please report it.");
}
