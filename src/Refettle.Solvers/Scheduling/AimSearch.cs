using Google.OrTools.Sat;
using Refettle.Timeline;
using Refettle.Timeline.Scheduling;

namespace Refettle.Solvers.Scheduling;

/// <summary>Makes the aims small one after the other, with the finish and all aims before held.</summary>
internal sealed class AimSearch(ScheduleQuestion question, Builder builder, Effort effort)
{
    private Schedule _best = new([], []);

    /// <param name="known">A schedule with the finish that is to be held.</param>
    /// <param name="better">Told of every better schedule.</param>
    /// <returns>The schedule, and whether every aim is proven.</returns>
    public (Schedule Schedule, bool IsProven) Run(Schedule known, Action<Schedule> better)
    {
        _best = known;
        var isProven = true;
        Consider(new Polish(builder, question.Later, new Random(effort.Limits.Seed))
            .Run(known, 300_000 / Math.Max(1, builder.Network.Count), effort.Cancel), better);
        for (var aim = 0; aim < question.Later.Count; aim++)
        {
            if (question.Later[aim].Cost(_best) == 0)
                continue;
            var until = effort.SecondsPassed + effort.SecondsLeft / (question.Later.Count - aim);
            isProven &= !effort.IsOver && Minimise(aim, until, better);
        }

        return (_best, isProven);
    }

    private bool Minimise(int aim, double until, Action<Schedule> better)
    {
        if (builder.Latest(_best.Makespan) is not { } latest)
            return false;
        var model = new ScheduleModel(builder.Network, builder.Earliest!, latest, 0, _best.Makespan);
        for (var held = 0; held < aim; held++)
        {
            if (AimTerms.Of(question.Later[held], model, builder.Network.Count) is not { } cost)
                return false;
            model.Model.Add(cost <= question.Later[held].Cost(_best));
        }

        if (AimTerms.Of(question.Later[aim], model, builder.Network.Count) is not { } term)
            return false;
        model.Model.Minimize(term);
        model.Timings.Hint([.. _best.Starts]);
        var (status, _, starts) = new ConstraintSearch(effort)
            .Run(model, until, effort.Limits.Work, better: found => Consider(builder.ToSchedule(found), better));
        if (starts is not null)
            Consider(builder.ToSchedule(starts), better);
        return status == CpSolverStatus.Optimal;
    }

    private void Consider(Schedule schedule, Action<Schedule> better)
    {
        if (schedule.Makespan > _best.Makespan || Compare(schedule, _best) >= 0)
            return;
        _best = schedule;
        better(schedule);
    }

    private int Compare(Schedule one, Schedule other) =>
        question.Later.Select(aim => aim.Cost(one).CompareTo(aim.Cost(other))).FirstOrDefault(order => order != 0);
}
