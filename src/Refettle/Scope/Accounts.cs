using Refettle.Access;

namespace Refettle.Scope;

/// <summary>Adds up what a plan and jobs bring and take.</summary>
internal static class Accounts
{
    public static ScopeSum Of(CarStanding standing, Plan plan, IEnumerable<(Job Job, decimal Worth)> jobs)
    {
        var all = jobs.ToArray();
        return new(
            all.Sum(job => job.Worth),
            new(MoneyOf(standing, plan) + all.Sum(job => job.Job.Parts.Amount)),
            plan.Cost.Open + plan.Cost.Close,
            new(all.Sum(job => job.Job.Work.Value)),
            plan.Cost.Unique);
    }

    /// <summary>A stance is paid once, however often the car is put into it.</summary>
    private static decimal MoneyOf(CarStanding standing, Plan plan) =>
        plan.Steps.DistinctBy(step => (step.Fact, step.Way)).Select(step => WayOf(standing, step)).OfType<Way>()
            .Sum(way => Pricing.MoneyOf(way, standing).Amount);

    private static Way? WayOf(CarStanding standing, Step step) => (step.Fact.Kind switch
    {
        FactKind.Open => standing.Joints[step.Fact.Subject].Ways,
        FactKind.State => standing.States[step.Fact.Subject].Ways,
        _ => [],
    }).FirstOrDefault(way => way.Id == step.Way);
}
