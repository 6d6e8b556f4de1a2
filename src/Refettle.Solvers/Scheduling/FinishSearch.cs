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
    private readonly Builder?[] _islands;
    private FinishProof? _proof;
    private int _begun;
    private bool _isImpossible;

    public FinishSearch(ScheduleQuestion question, Effort effort, IProgress<ScheduleAnswer>? progress)
    {
        (_question, _effort) = (question, effort);
        _builder = new(Network.Of(question.Project));
        _best = new(_builder, LowerBounds.Of(_builder), () => progress?.Report(Answer()));
        _islands = new Builder?[effort.Limits.Workers];
        _islands[0] = _builder;
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
            Breed(0, (long)(work * PlacedPerWork / _builder.Network.Count), _effort.Cancel);
        if (!IsOver)
            Mix(_effort.Limits.Time.TotalSeconds);
    }

    /// <summary>What is easy is proven soon; what is hard is proven from a better schedule. Breeding gets within one of the best there
    /// in a tenth of a second. A proof once begun goes on beside it.</summary>
    private void Within(double seconds)
    {
        double Part(double part, double most) => Math.Min(part * seconds, most);
        BreedTogether(Part(0.05, 0.05));
        Look(ProofTurns.Searching, Part(0.05, 0.25));
        if (CanProve && _islands.Length > 1)
            Look(ProofTurns.Breeding, Part(0.07, 0.7));
        else
            BreedTogether(Part(0.07, 0.7));
        Look(ProofTurns.Lasting, seconds);
    }

    private bool IsTimeUp(double until) => IsOver || _effort.SecondsPassed >= until;

    private void Look(ProofTurns turns, double until)
    {
        if (IsTimeUp(until))
            return;
        if (CanProve)
            Prove(turns, until);
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
        _effort.Together(island =>
        {
            while (!stop.IsCancellationRequested)
                Breed(island, long.MaxValue / 2, stop.Token);
        });
        stop.Cancel();
    }

    private void Breed(int island, long mostBuilt, CancellationToken cancel)
    {
        var builder = _islands[island] ??= new(_builder.Network);
        builder.MostPutBack = builder.Network.Count;
        var random = new Random(_effort.Limits.Seed * 31 + Interlocked.Increment(ref _begun) - 1);
        new GeneticSearch(builder, _best.Starts!, random, PopulationSize).Run(_best.Bound, mostBuilt, _best.Keep, cancel);
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

    private void Prove(ProofTurns turns, double until)
    {
        _proof ??= new(_builder, _best, _effort, (island, stop) => Breed(island, long.MaxValue / 2, stop));
        using var stop = _effort.Until(() => IsTimeUp(until));
        _proof.Run(turns, stop.Token);
        stop.Cancel();
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
