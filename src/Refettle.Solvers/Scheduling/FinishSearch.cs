using Google.OrTools.Sat;
using Refettle.Timeline.Scheduling;

namespace Refettle.Solvers.Scheduling;

/// <summary>Looks for the earliest finish.</summary>
internal sealed class FinishSearch
{
    private const int PopulationSize = 100;

    /// <summary>Activities placed while breeding, for each unit of work that the solver is given.</summary>
    private const double PlacedPerWork = 1_000_000;

    /// <summary>Breeding and proving take turns: what is easy is proven soon, and what is hard is
    /// proven from a better schedule. Each ends at a part of the time, or after some seconds if those are fewer: breeding gets within one
    /// of the best there in a tenth of a second, and what it gains later the proof finds too.</summary>
    private static readonly (bool IsBreeding, double Part, double Seconds)[] Turns =
        [(true, 0.05, 0.05), (false, 0.05, 0.25), (true, 0.15, 0.65), (false, 1, double.MaxValue)];

    private readonly ScheduleQuestion _question;
    private readonly Effort _effort;
    private readonly Builder _builder;
    private readonly BestFinish _best;
    private bool _isImpossible;

    public FinishSearch(ScheduleQuestion question, Effort effort, IProgress<ScheduleAnswer>? progress)
    {
        (_question, _effort) = (question, effort);
        _builder = new(Network.Of(question.Project));
        _best = new(_builder, LowerBounds.Of(_builder), () => progress?.Report(Answer()));
        _isImpossible = _builder.Earliest is null;
    }

    public Builder Builder => _builder;

    private bool IsOver => _isImpossible || _best.IsProven;

    public void Run(double share)
    {
        if (_isImpossible)
            return;
        First();
        if (_effort.Limits.Work is { } work)
            Repeatably(work);
        else
            Within(_effort.Limits.Time.TotalSeconds * share);
    }

    public ScheduleAnswer Answer()
    {
        if (_best.Starts is not { } starts)
            return new(_isImpossible ? ScheduleStatus.Impossible : ScheduleStatus.Unknown, null, _best.Bound, [], []);
        var schedule = _builder.ToSchedule(starts);
        var status = _best.IsProven && _question.Later.Count == 0 ? ScheduleStatus.Optimal : ScheduleStatus.Feasible;
        return new(status, schedule, _best.Bound, _question.Later.Select(aim => aim.Cost(schedule)).ToValueList(), []);
    }

    private void First()
    {
        var first = new FirstSchedule(_builder, new Random(_effort.Limits.Seed));
        if (_question.Known is { } known)
            first.From([.. known.Starts]);
        first.Run(Math.Min(200, 20_000 / _builder.Network.Count), _best.Bound, _effort.Cancel);
        if (first.Best is { } starts)
            _best.Keep(starts);
    }

    private void Repeatably(double work)
    {
        if (_best.Starts is not null && !IsOver)
            Breed(_builder, 0, (long)(work * PlacedPerWork / _builder.Network.Count), _effort.Cancel);
        if (!IsOver)
            Mix(_effort.Limits.Time.TotalSeconds);
    }

    private void Within(double seconds)
    {
        foreach (var (isBreeding, part, most) in Turns)
        {
            var until = Math.Min(part * seconds, most);
            if (IsOver || _effort.SecondsPassed >= until)
                continue;
            if (isBreeding)
                BreedTogether(until);
            else if (_best.Starts is null || _builder.Network.HasWindows)
                Mix(until);
            else
                Prove(until);
        }
    }

    /// <summary>Breeds on as many islands as there are workers; an island that has got no further
    /// begins anew from the best of all.</summary>
    private void BreedTogether(double until)
    {
        if (_best.Starts is null)
            return;
        using var stop = _effort.Until(() => _best.IsProven || _effort.SecondsPassed >= until);
        var islands = Enumerable.Range(0, _effort.Limits.Workers).Select(island => Task.Run(() =>
        {
            var builder = island == 0 ? _builder : new Builder(_builder.Network);
            for (var round = 0; !stop.IsCancellationRequested; round++)
                Breed(builder, _effort.Limits.Workers * round + island, long.MaxValue / 2, stop.Token);
        })).ToArray();
        Task.WaitAll(islands);
        stop.Cancel();
    }

    private void Breed(Builder builder, int stream, long mostBuilt, CancellationToken cancel)
    {
        builder.MostPutBack = builder.Network.Count;
        var search = new GeneticSearch(builder, _best.Starts!, new Random(_effort.Limits.Seed * 31 + stream), PopulationSize);
        search.Run(_best.Bound, mostBuilt, _best.Keep, cancel);
        _best.Keep(search.Best);
    }

    /// <summary>Looks with all that the solver has, from the best known.</summary>
    private void Mix(double until)
    {
        if (Model(_best.Starts is null ? _builder.Horizon : _best.Makespan) is not { } model)
            return;
        if (_best.Starts is { } known)
        {
            model.Timings.Hint(known);
            model.Model.AddHint(model.Makespan, _best.Makespan);
        }

        Learn(model, new ConstraintSearch(_effort).Run(model, until, _effort.Limits.Work, _best.Keep));
    }

    /// <summary>Looks for a proof that nothing finishes earlier than the best known.</summary>
    private void Prove(double until)
    {
        if (Model(_best.Makespan - 1) is not { } model)
            return;
        model.Timings.Hint(_best.Starts!);
        Learn(model, new ConstraintSearch(_effort).Prove(model, until, _best.Keep));
    }

    /// <summary>Schedules that finish at a time at the latest; null, and that is noted, when there is none.</summary>
    private ScheduleModel? Model(int most)
    {
        if (_builder.Latest(most) is not { } latest)
        {
            Exclude(most);
            return null;
        }

        var model = new ScheduleModel(_builder.Network, _builder.Earliest!, latest, _best.Bound, most);
        model.Model.Minimize(model.Makespan);
        return model;
    }

    private void Learn(ScheduleModel model, (CpSolverStatus Status, double Bound, int[]? Starts) found)
    {
        if (found.Starts is not null)
            _best.Keep(found.Starts);
        if (found.Status == CpSolverStatus.Infeasible)
            Exclude(model.Horizon);
        else if (!double.IsInfinity(found.Bound))
            _best.Raise((int)Math.Ceiling(found.Bound - 1e-6));
    }

    /// <summary>No schedule finishes so early.</summary>
    private void Exclude(int finish)
    {
        _isImpossible = _best.Starts is null;
        _best.Raise(finish + 1);
    }
}
