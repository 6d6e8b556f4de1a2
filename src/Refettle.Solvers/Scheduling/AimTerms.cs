using Google.OrTools.Sat;
using Refettle.Timeline.Scheduling;

namespace Refettle.Solvers.Scheduling;

/// <summary>What an aim counts, as an expression of a model that is exact at its least value.</summary>
internal static class AimTerms
{
    /// <summary>Changes are counted along a tour through all that need a set-up, with an arc for each
    /// pair: more than these is too much.</summary>
    private const int MostSetups = 40;

    /// <returns>Null when the aim is too large for the model.</returns>
    public static LinearExpr? Of(Aim aim, ScheduleModel model, int count) => aim switch
    {
        Aim.LateStarts late => LinearExpr.WeightedSum(
            Weighted(late.Weights).Select(i => model.Makespan - model.Timings.Start(i, null)),
            Weighted(late.Weights).Select(i => (long)late.Weights[i])),
        Aim.SameDays same =>
            LinearExpr.WeightedSum(Weighted(same.Weights).Select(i => DaysMoved(same, model, i)),
                Weighted(same.Weights).Select(i => (long)same.Weights[i])),
        Aim.FewChanges few when few.Setups.Count(setup => setup >= 0) <= MostSetups => Changes(few.Setups, model, count),
        _ => null,
    };

    private static List<int> Weighted(ValueList<int> weights) => [.. Enumerable.Range(0, weights.Count).Where(i => weights[i] != 0)];

    private static IntVar DaysMoved(Aim.SameDays same, ScheduleModel model, int i)
    {
        var before = (int)Math.Floor((double)same.Starts[i] / same.Day);
        var span = (model.Horizon / same.Day) + Math.Abs(before) + 2;
        var day = model.Model.NewIntVar(before - span, before + span, "");
        var moved = model.Model.NewIntVar(0, span, "");
        var start = model.Timings.Start(i, null);
        model.Model.Add(start >= same.Day * day);
        model.Model.Add(start <= same.Day * day + (same.Day - 1));
        model.Model.Add(moved >= day - before);
        model.Model.Add(moved >= before - day);
        return moved;
    }

    private static LinearExpr Changes(ValueList<int> setups, ScheduleModel model, int count)
    {
        var needing = Enumerable.Range(0, count).Where(i => setups[i] >= 0).ToList();
        if (needing.Count < 2)
            return LinearExpr.Constant(0);
        var (tour, changes) = (model.Model.AddCircuit(), new List<ILiteral>());
        for (var one = 0; one < needing.Count; one++)
        {
            tour.AddArc(0, one + 1, model.Model.NewBoolVar(""));
            tour.AddArc(one + 1, 0, model.Model.NewBoolVar(""));
            for (var other = 0; other < needing.Count; other++)
            {
                if (one == other)
                    continue;
                var follows = model.Model.NewBoolVar("");
                tour.AddArc(one + 1, other + 1, follows);
                var axis = model.Timings.AxisOf(needing[one]) == model.Timings.AxisOf(needing[other])
                    ? model.Timings.AxisOf(needing[one])
                    : null;
                model.Model.Add(model.Timings.Start(needing[other], axis) >= model.Timings.Start(needing[one], axis))
                    .OnlyEnforceIf(follows);
                if (setups[needing[one]] != setups[needing[other]])
                    changes.Add(follows);
            }
        }

        return LinearExpr.Sum(changes);
    }
}
