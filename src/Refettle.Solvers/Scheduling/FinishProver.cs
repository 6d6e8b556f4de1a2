using Google.OrTools.Sat;
using Refettle.Timeline.Scheduling;

namespace Refettle.Solvers.Scheduling;

/// <summary>Looks for a schedule that finishes earlier than the best known, until it is proven that there is none. When another search has found
/// a better one it begins anew: what it learns follows from the finish that is to be beaten.</summary>
internal sealed class FinishProver(Network network, BestFinish best, Effort effort, int lane)
{
    private readonly Builder _builder = new(network);

    public void Run(double until)
    {
        while (!best.IsProven && !effort.IsOver && effort.SecondsPassed < until)
            Once(until);
    }

    private void Once(double until)
    {
        var toBeat = best.Makespan;
        if (_builder.Latest(toBeat - 1) is not { } latest)
        {
            best.Raise(toBeat);
            return;
        }

        var model = new ScheduleModel(network, _builder.Earliest!, latest, best.Bound, toBeat - 1);
        model.Model.Minimize(model.Makespan);
        var (status, bound, starts) = new ConstraintSearch(effort).Prove(model, lane, () => best.IsProven || best.Makespan < toBeat || effort.SecondsPassed >= until, Keep);
        if (starts is not null)
            Keep(starts);
        if (status == CpSolverStatus.Infeasible)
            best.Raise(toBeat);
        else if (!double.IsInfinity(bound))
            best.Raise((int)Math.Ceiling(bound - 1e-6));

        void Keep(int[] found)
        {
            toBeat = Math.Min(toBeat, best.MakespanOf(found));
            best.Keep(found);
        }
    }
}
