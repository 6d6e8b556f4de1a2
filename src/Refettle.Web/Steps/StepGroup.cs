using Refettle.Access;
using Refettle.Web.Words;

namespace Refettle.Web.Steps;

/// <summary>Steps that follow each other in one place and posture.</summary>
/// <param name="First">The number of its first step, from 0.</param>
public sealed record StepGroup(string Place, string Posture, int First, int Count)
{
    public static IEnumerable<StepGroup> Of(Plan plan, CarLookup car)
    {
        var first = 0;
        for (var step = 1; step <= plan.Steps.Count; step++)
        {
            if (step < plan.Steps.Count && (plan.Steps[step].FollowsByItself() || Where(plan.Steps[step]) == Where(plan.Steps[first])))
                continue;
            yield return new(car.ZoneName(plan.Steps[first].Place), Plain.Posture(plan.Steps[first].Posture), first, step - first);
            first = step;
        }
    }

    private static (string, string) Where(Step step) => (step.Place, step.Posture);
}
