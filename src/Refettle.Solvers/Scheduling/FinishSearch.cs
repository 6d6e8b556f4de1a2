using Google.OrTools.Sat;
using Refettle.Timeline.Scheduling;
using Refettle.Timeline.Scheduling.Proving;

namespace Refettle.Solvers.Scheduling;

/// <summary>Looks for the earliest finish.</summary>
internal sealed class FinishSearch
{
    private const int PopulationSize = 100;

    /// <summary>Activities placed while breeding, for each unit of work that the solver is given.</summary>
    private const double PlacedPerWork = 1_000_000;

    private readonly ScheduleQuestion _question;
    private readonly Effort _effort;
    private readonly Builder _builder;
    private readonly BestFinish _best;
    private ProofSearch[]? _proofs;
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

    private bool CanProve => _best.Starts is not null && ProofSearch.CanTake(_builder);

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

    /// <summary>Breeding and proving take turns: what is easy is proven soon, and what is hard is proven from a better schedule. Breeding
    /// gets within one of the best there in a tenth of a second. One above the bound, the best is more often not yet found than the bound
    /// too low.</summary>
    private void Within(double seconds)
    {
        double Part(double part, double most = double.MaxValue) => Math.Min(part * seconds, most);
        BreedTogether(Part(0.05, 0.05));
        Look(Part(0.05, 0.25));
        BreedTogether(Part(0.15, 1.5));
        if (CanProve && _best.Makespan - _best.Bound == 1)
            BreedTogether(Part(0.6));
        Look(seconds);
    }

    private bool IsTimeUp(double until) => IsOver || _effort.SecondsPassed >= until;

    private void Look(double until)
    {
        if (IsTimeUp(until))
            return;
        if (CanProve)
            Prove(until);
        else
            Mix(until);
    }

    /// <summary>Breeds on as many islands as there are workers; an island that has got no further
    /// begins anew from the best of all.</summary>
    private void BreedTogether(double until)
    {
        if (_best.Starts is null || IsTimeUp(until))
            return;
        using var stop = _effort.Until(() => IsTimeUp(until));
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

    /// <summary>Looks for a proof that nothing finishes earlier than the best known, and goes on where the last turn ended.</summary>
    private void Prove(double until)
    {
        if (_proofs is null && !BeginProofs())
            return;
        using var stop = _effort.Until(() => IsTimeUp(until));
        Task.WaitAll([.. _proofs!.Select(proof => Task.Run(() =>
        {
            if (!proof.Run(() => _best.Makespan - 1, _best.Keep, stop.Token))
                return;
            Exclude(_best.Makespan - 1);
            stop.Cancel();
        }))]);
        stop.Cancel();
    }

    private bool BeginProofs()
    {
        if (LatestOrExclude(_best.Makespan - 1) is not { } latest)
            return false;
        var exchange = new Exchange(_effort.Limits.Workers);
        _proofs = [.. Enumerable.Range(0, _effort.Limits.Workers)
            .Select(place => new ProofSearch(_builder.Network, _builder.Earliest!, latest, _effort.Limits.Seed, exchange, place))];
        return true;
    }

    /// <summary>Schedules that finish at a time at the latest; null, and that is noted, when there is none.</summary>
    private ScheduleModel? Model(int most)
    {
        if (LatestOrExclude(most) is not { } latest)
            return null;
        var model = new ScheduleModel(_builder.Network, _builder.Earliest!, latest, _best.Bound, most);
        model.Model.Minimize(model.Makespan);
        return model;
    }

    /// <summary>The latest starts for a finish; null, and that is noted, when already lags exclude it.</summary>
    private int[]? LatestOrExclude(int finish)
    {
        var latest = _builder.Latest(finish);
        if (latest is null)
            Exclude(finish);
        return latest;
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
