using Refettle.Access;
using Refettle.Web.Words;

namespace Refettle.Web.Steps;

/// <summary>How far a plan is carried out, by what the log says.</summary>
/// <param name="Done">For each step of the plan, whether it is done.</param>
public sealed record PlanProgress(Plan Plan, ValueList<bool> Done)
{
    public int DoneCount => Done.Count(done => done);

    /// <summary>The first step that is not done; -1 when all are.</summary>
    public int Next => Enumerable.Range(0, Done.Count).FirstOrDefault(step => !Done[step], -1);

    /// <summary>Opening minutes of the steps that are left.</summary>
    public Minutes Left => new(Plan.Steps.Where((_, step) => !Done[step]).Sum(step => step.Cost.Open.Value));

    public static PlanProgress Of(Plan plan, CarLookup car)
    {
        var done = plan.Steps.Select(step => !car.IsStance(step.Fact) && car.Holds(step.Fact)).ToArray();
        MarkStances(plan, car, done);
        return new(plan, done.ToValueList());
    }

    /// <summary>Stances come and go, and one plan may take the same one twice. A change of stance counts as done when work that
    /// follows it is done, or when every earlier change is done and the car is in that stance now.</summary>
    private static void MarkStances(Plan plan, CarLookup car, bool[] done)
    {
        var changes = Enumerable.Range(0, done.Length).Where(step => car.IsStance(plan.Steps[step].Fact)).ToArray();
        var earlierDone = true;
        for (var i = 0; i < changes.Length && earlierDone; i++)
        {
            var end = i + 1 < changes.Length ? changes[i + 1] : done.Length;
            var worked = Enumerable.Range(changes[i], end - changes[i])
                .Any(step => done[step] && NeedsStance(plan.Steps[step], plan.Steps[changes[i]]));
            earlierDone = done[changes[i]] = worked || car.Car.Stance == plan.Steps[changes[i]].Fact.Subject;
        }
    }

    private static bool NeedsStance(Step step, Step stance) =>
        step.Stance == stance.Fact.Subject || step.Needs.Contains(stance.Fact);
}
