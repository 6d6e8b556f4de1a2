using Refettle.Access;
using Refettle.Timeline.Network;

namespace Refettle.Discovery;

/// <summary>What tries at stuck joints take beyond their steps, as the timeline counts them.</summary>
internal static class TriesAhead
{
    public static Minutes Of(OutlookQuestion question, Plan plan)
    {
        var stuck = StuckJoints.Of(new() { Car = question.Car, Plan = plan, Ladders = question.Ladders }, new(question.Car));
        var steps = plan.Steps.Where(step => step.Fact.Kind == FactKind.Open && stuck.ContainsKey(step.Fact.Subject));
        return new(steps.Sum(step => Math.Max(0,
            stuck[step.Fact.Subject] is var joint ? joint.Expected(0, joint.Row.Count).Value - step.Cost.Open.Value : 0)));
    }
}
