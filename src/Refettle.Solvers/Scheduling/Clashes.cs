using Google.OrTools.Sat;
using Refettle.Timeline;
using Refettle.Timeline.Scheduling;

namespace Refettle.Solvers.Scheduling;

/// <summary>Finds a smallest set of conditions that cannot be kept together: halving what is added and what is tried without
/// (QuickXplain, Junker, AAAI 2004), each time asking whether a schedule with just these conditions exists.</summary>
internal sealed class Clashes(Project project, Effort effort, double until)
{
    private bool _isUnsure;

    /// <summary>Wishes of which none can be left out; empty when nothing clashes, when it is
    /// impossible without any condition, or when the time ended first.</summary>
    public ValueList<Condition> Find()
    {
        var conditions = Conditions.Of(project).ToList();
        if (!IsPossible([]))
            return [];
        var clash = conditions.Count > 0 && !IsPossible(conditions) ? Explain([], hasGrown: false, conditions) : [];
        return _isUnsure ? [] : clash.OrderBy(condition => condition.Kind).ThenBy(condition => condition.Index).ToValueList();
    }

    private List<Condition> Explain(List<Condition> background, bool hasGrown, List<Condition> conditions)
    {
        if (hasGrown && !IsPossible(background))
            return [];
        if (conditions.Count == 1 || _isUnsure)
            return conditions;
        var half = conditions.Count / 2;
        var (first, second) = (conditions[..half], conditions[half..]);
        var fromSecond = Explain([.. background, .. first], first.Count > 0, second);
        var fromFirst = Explain([.. background, .. fromSecond], fromSecond.Count > 0, first);
        return [.. fromFirst, .. fromSecond];
    }

    private bool IsPossible(List<Condition> conditions)
    {
        var builder = new Builder(Network.Of(Conditions.Keep(project, conditions)));
        if (builder.Earliest is null)
            return false;
        var first = new FirstSchedule(builder, new Random(effort.Limits.Seed));
        first.Run(20, WorkTime.Never - 1, effort.Cancel);
        if (first.Best is not null)
            return true;
        if (builder.Latest(builder.Horizon) is not { } latest)
            return false;
        var model = new ScheduleModel(builder.Network, builder.Earliest, latest, 0, builder.Horizon);
        var (status, _, _) = new ConstraintSearch(effort).Run(model, until, effort.Limits.Work);
        _isUnsure |= status is CpSolverStatus.Unknown;
        return status is not CpSolverStatus.Infeasible;
    }
}
