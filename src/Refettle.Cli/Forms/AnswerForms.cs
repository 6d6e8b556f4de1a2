using Refettle.Access;

namespace Refettle.Cli.Forms;

/// <summary>What else comes within reach, as <c>--json</c> gives it.</summary>
internal sealed record WithinForm(PlanForm Plan, ValueList<ExtraForm> Extras)
{
    public static WithinForm Of(WithinAnswer answer) => new(
        PlanForm.Of(answer.Plan),
        answer.Extras.Select(extra => new ExtraForm(extra.Fact, extra.Says, CostForm.Of(extra.Cost), extra.Proven)).ToValueList());
}

internal sealed record ExtraForm(Fact Fact, string Says, CostForm Cost, bool Proven);

/// <summary>The best plan and its alternatives.</summary>
internal sealed record OthersForm(PlanForm Best, ValueList<OtherForm> Others)
{
    public static OthersForm Of(Plan best, ValueList<OtherPlan> others) => new(
        PlanForm.Of(best),
        others.Select(other => new OtherForm(PlanForm.Of(other.Plan), other.Instead, other.Spares, other.OtherWays)).ToValueList());
}

internal sealed record OtherForm(PlanForm Plan, ValueList<Fact> Instead, ValueList<Fact> Spares, ValueList<string> OtherWays);

/// <summary>Two sets of goals, and both at once.</summary>
internal sealed record ComparisonForm(PlanForm First, PlanForm Second, PlanForm Both, Minutes? Shared)
{
    public static ComparisonForm Of(Comparison comparison) => new(
        PlanForm.Of(comparison.First), PlanForm.Of(comparison.Second), PlanForm.Of(comparison.Both), comparison.Shared);
}
