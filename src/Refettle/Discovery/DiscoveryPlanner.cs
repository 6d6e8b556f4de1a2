using Refettle.Access;
using Refettle.Scope;
using Refettle.Timeline.Spells;

namespace Refettle.Discovery;

/// <summary>Tells by what a discovery changes plan, basket and scope.</summary>
/// <param name="scoper">Null leaves the scope out.</param>
public sealed class DiscoveryPlanner(IAccessPlanner planner, IScopePlanner? scoper)
{
    private const string TimeIsUp = "the time for it was up";

    /// <summary>The difference, added up again before it is given. A cancelled token gives what was worked
    /// out by then, and tells the rest.</summary>
    public OutlookDifference Of(OutlookQuestion before, OutlookQuestion after, CancellationToken cancel = default)
    {
        var notAnew = new List<string>();
        var verdicts = new Verdicts(planner, cancel).Of(before, after);
        var (was, now) = (Undertaking.Of(before.Car, verdicts.Before), Undertaking.Of(after.Car, verdicts.After));
        var first = Reach(was, cancel);
        var second = WhatIs.Of(was.Car) == WhatIs.Of(now.Car) && was.Goals.Equals(now.Goals) ? first : Reach(now, cancel);
        var isSure = ReferenceEquals(first, second) || (IsKnown(first) && IsKnown(second));
        if (!isSure)
            notAnew.Add($"steps and hours, and what the work on the way uses up: {TimeIsUp} before both plans were proven to be the least");
        var (one, two) = isSure
            ? (Outlook(before, was, first), Outlook(after, now, second))
            : (AskedFor(before, was), AskedFor(after, now));
        if (HasSameScope(before, was, after, now))
            return Checked(one, two,
                OutlookDifference.Between(one, two, Suggested(was, now), notAnew.ToValueList()) with { Scope = ScopeChange.None });
        (one, two) = WithScopes((one, before, was), (two, after, now), notAnew, cancel);
        return Checked(one, two, OutlookDifference.Between(one, two, Suggested(was, now), notAnew.ToValueList()));
    }

    private Plan Reach(Undertaking asked, CancellationToken cancel) => asked.Goals.Count == 0
        ? Plan.Nothing
        : planner.Reach(asked.Car, new() { Goals = asked.Goals }, cancel);

    private static bool IsKnown(Plan plan) => plan.Status is PlanStatus.Optimal or PlanStatus.Impossible;

    /// <summary>Two plans of which one is only the best found so far differ by how far the search came: of them nothing is told, only the
    /// pieces that verdicts and the owner ask for.</summary>
    private static Outlook AskedFor(OutlookQuestion question, Undertaking asked) =>
        new(null, new(
            PiecesAhead.Of(question, new() { Question = new() { Goals = asked.Goals }, Status = PlanStatus.Feasible }, asked.Renew)), null);

    private static Outlook Outlook(OutlookQuestion question, Undertaking asked, Plan plan) => new(
        new(plan.Status, plan.Steps.Select(step => new StepAhead(step.Fact, step.Way, step.Cost.Open + step.Cost.Close)).ToValueList(),
            TriesAhead.Of(question, plan)),
        new(PiecesAhead.Of(question, plan, asked.Renew)), null);

    private static ValueList<SuggestedVerdict> Suggested(Undertaking was, Undertaking now) =>
        now.Suggested.Except(was.Suggested).ToValueList();

    /// <summary>Nothing that the scope depends on changed: it is not worked out again.</summary>
    private static bool HasSameScope(OutlookQuestion before, Undertaking was, OutlookQuestion after, Undertaking now) =>
        was.Car.Jobs.Count == 0 && now.Car.Jobs.Count == 0
        || (WhatIs.Of(was.Car) == WhatIs.Of(now.Car) && Asked(before, was) == Asked(after, now));

    private static ScopeQuestion Asked(OutlookQuestion question, Undertaking asked) => ScopeDays.Question(asked.Car, question.Now);

    private (Outlook, Outlook) WithScopes(
        (Outlook Outlook, OutlookQuestion Question, Undertaking Asked) before,
        (Outlook Outlook, OutlookQuestion Question, Undertaking Asked) after, List<string> notAnew, CancellationToken cancel)
    {
        var first = Choose(Asked(before.Question, before.Asked), before.Asked.Car, cancel);
        var second = first.Why is null ? Choose(Asked(after.Question, after.Asked), after.Asked.Car, cancel) : first;
        if (second.Why is not null)
            notAnew.Add($"the scope: {second.Why}");
        return second.Why is null
            ? (before.Outlook with { Scope = first.Scope }, after.Outlook with { Scope = second.Scope })
            : (before.Outlook, after.Outlook);
    }

    private (ScopeAhead? Scope, string? Why) Choose(ScopeQuestion question, Car car, CancellationToken cancel)
    {
        if (scoper is null)
            return (null, "there is no planner for it here");
        if (car.Jobs.Count == 0)
            return (new(PlanStatus.Optimal, [], default, default, 0), null);
        if (ScopeQuestionCheck.Of(car, question) is { Count: > 0 } faults)
            return (null, $"{faults[0].Place}: {faults[0].Found}");
        var answer = cancel.IsCancellationRequested ? null : scoper.Choose(car, question, cancel);
        return answer is null || (cancel.IsCancellationRequested && answer.Status != PlanStatus.Optimal)
            ? (null, TimeIsUp)
            : (new(answer.Status, answer.Chosen, answer.Sum.Time, answer.Sum.Money, answer.Gain), null);
    }

    private static OutlookDifference Checked(Outlook before, Outlook after, OutlookDifference difference) =>
        DifferenceCheck.Of(before, difference, after) is { Count: > 0 } faults
        ? throw new InvalidOperationException("The difference does not add up: " + faults[0])
        : difference;
}
