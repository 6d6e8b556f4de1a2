using Refettle.Access;

namespace Refettle.Cli.Forms;

/// <summary>A plan as <c>--json</c> gives it. Minutes are plain numbers.</summary>
internal sealed record PlanForm(
    PlanStatus Status, ValueList<Fact> Goals, ValueList<string> Without, CostForm Cost, Minutes Bound, Minutes ExtraStanceChanges,
    ValueList<StepForm> Steps, Obstacle? Obstacle)
{
    public static PlanForm Of(Plan plan) => new(
        plan.Status, plan.Question.Goals, plan.Question.Without, CostForm.Of(plan.Cost), plan.Bound, plan.ExtraStanceChanges,
        plan.Steps.Select(StepForm.Of).ToValueList(), plan.Obstacle);
}

/// <summary>The price of a plan, all in minutes.</summary>
internal sealed record CostForm(Minutes MinutesOpen, Minutes MinutesClose, Minutes Destroyed, Minutes Unique, Minutes Total)
{
    public static CostForm Of(Cost cost) => new(cost.Open, cost.Close, cost.Destroyed, cost.Unique, cost.Total);
}

/// <summary>One step.</summary>
internal sealed record StepForm(
    Fact Fact, string Way, string Says, string Tool, Minutes MinutesOpen, Minutes MinutesClose, Minutes Destroyed, Minutes Unique,
    string Place, string Posture, string? Stance, ValueList<Fact> Needs, ValueList<string> Destroys, string? Prop,
    ValueList<string> Cautions, Origin Origin)
{
    public static StepForm Of(Step step) => new(
        step.Fact, step.Way, step.Says, step.Tool, step.Cost.Open, step.Cost.Close, step.Cost.Destroyed, step.Cost.Unique,
        step.Place, step.Posture, step.Stance, step.Needs, step.Destroys, step.Prop, step.Cautions, step.Origin);
}
