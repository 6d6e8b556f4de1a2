using Refettle.Access;
using Refettle.Scope;

namespace Refettle.Cli.Forms;

/// <summary>A choice of jobs as <c>--json</c> gives it.</summary>
internal sealed record ScopeForm(
    PlanStatus Status, ScopeQuestion Question, ValueList<string> Chosen, ValueList<LeftJob> Left, ScopeSumForm Sum, decimal Gain,
    decimal Bound,
    ValueList<JobCostForm> Costs, ValueList<DropFirst> DroppedFirst, ValueList<string> Obstacles, PlanForm? Plan)
{
    public static ScopeForm Of(ScopeAnswer answer, ScopeReasons reasons) => new(
        answer.Status, answer.Question, answer.Chosen, answer.Left, ScopeSumForm.Of(answer.Sum), answer.Gain, answer.Bound,
        reasons.Costs
            .Select(cost => new JobCostForm(cost.Job, cost.IsIn, ScopeSumForm.Of(cost.Takes), cost.Takes.Gain(answer.Question.PerHour),
                cost.Along, cost.Since)).ToValueList(),
        reasons.First, answer.Obstacles, answer.Plan is null ? null : PlanForm.Of(answer.Plan));
}

/// <summary>What jobs bring and take; minutes are plain numbers.</summary>
internal sealed record ScopeSumForm(decimal Worth, Money Money, Minutes MinutesOpening, Minutes MinutesWork, Minutes MinutesUnique)
{
    public static ScopeSumForm Of(ScopeSum sum) => new(sum.Worth, sum.Money, sum.Opening, sum.Work, sum.Unique);
}

/// <summary>What a job brings and takes given the rest.</summary>
internal sealed record JobCostForm(string Job, bool IsIn, ScopeSumForm Takes, decimal Gain, ValueList<string> Along, Fact? Since);
