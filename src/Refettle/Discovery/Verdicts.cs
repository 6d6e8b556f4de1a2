using Refettle.Access;
using Refettle.Judging;

namespace Refettle.Discovery;

/// <summary>What is suggested, at two moments, for the parts that are worn or worse and those the owner decided of.</summary>
internal sealed class Verdicts(IAccessPlanner planner, CancellationToken cancel)
{
    /// <summary>A part about which nothing changed is judged once.</summary>
    public (ValueList<VerdictAnswer> Before, ValueList<VerdictAnswer> After) Of(OutlookQuestion before, OutlookQuestion after)
    {
        var now = Judge(after, Asked(after.Car));
        var known = IsAlike(before, after) ? now.Where(answer => IsAlike(before.Car, after.Car, answer.Part)).ToList() : [];
        var asked = Asked(before.Car);
        var was = Judge(before, asked.Except(known.Select(answer => answer.Part)).ToValueList());
        return (known.Where(answer => asked.Contains(answer.Part)).Concat(was).OrderBy(answer => answer.Part, StringComparer.Ordinal)
            .ToValueList(), now);
    }

    private static ValueList<string> Asked(Car car) => car.Structure.Parts.Select(part => part.Id)
        .Where(part => car.Verdicts.Any(verdict => verdict.Part == part) || Condition.Of(car, $"part {part}").Worst >= Severeness.Worn)
        .Order(StringComparer.Ordinal).ToValueList();

    private ValueList<VerdictAnswer> Judge(OutlookQuestion question, ValueList<string> parts) =>
        parts.Count == 0 ? [] : new VerdictPlanner(planner).Of(question.Car, new()
        {
            Parts = parts,
            Planned = Undertaking.ChosenGoals(new(question.Car)),
            DaysLeft = question.Car.DaysLeft(question.Today),
            Ladders = question.Ladders,
        }, cancel);

    private static bool IsAlike(OutlookQuestion before, OutlookQuestion after) =>
        before.Today == after.Today && WhatIs.Of(before.Car) == WhatIs.Of(after.Car)
        && before.Car.Due() == after.Car.Due() && before.Car.Tries.Equals(after.Car.Tries);

    private static bool IsAlike(Car before, Car after, string part) => Told(before, part).Equals(Told(after, part));

    private static (ValueList<Finding>, ValueList<Limit>, PartEstimate?, Verdict?) Told(Car car, string part) => (
        car.Findings.Where(finding => finding.Of == $"part {part}").ToValueList(),
        car.Limits.Where(limit => limit.Of == $"part {part}").ToValueList(),
        car.Estimates.FirstOrDefault(estimate => estimate.Part == part), car.Verdicts.FirstOrDefault(verdict => verdict.Part == part));
}

/// <summary>Of a car, what a plan depends on.</summary>
internal sealed record WhatIs(
    Structure Structure, ValueList<Fact> Done, string? Stance, ValueList<string> Unsound, Settings Settings, ValueList<Job> Jobs,
    ValueList<string> JobsDone, ValueList<string>? Scope)
{
    public static WhatIs Of(Car car) =>
        new(car.Structure, car.Done, car.Stance, car.Unsound, car.Settings, car.Jobs, car.JobsDone, car.Scope);
}
