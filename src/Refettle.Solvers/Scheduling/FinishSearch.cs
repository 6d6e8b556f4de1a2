using Google.OrTools.Sat;
using Refettle.Timeline.Scheduling;

namespace Refettle.Solvers.Scheduling;

/// <summary>Looks for the earliest finish.</summary>
internal sealed class FinishSearch
{
    private const int Population = 100;

    /// <summary>Activities placed while breeding, for each unit of work that the solver is given.</summary>
    private const double PlacedPerWork = 1_000_000;

    /// <summary>What is easy is bred in a moment; to begin a proof takes longer.</summary>
    private const double FirstBreedingSeconds = 0.05;

    /// <summary>Breeding ends here, and those who bred begin to prove.</summary>
    private const double BreedingPart = 0.5;

    private const double MostBreedingSeconds = 15;

    private readonly ScheduleQuestion _question;
    private readonly Effort _effort;
    private readonly Builder _builder;
    private readonly BestFinish _best;
    private bool _isImpossible;

    public FinishSearch(ScheduleQuestion question, Effort effort, IProgress<ScheduleAnswer>? progress)
    {
        (_question, _effort) = (question, effort);
        _builder = new(Network.Of(question.Project));
        _best = new(_builder.Network, LowerBounds.Of(_builder), () => progress?.Report(Answer()));
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
        if (_best.Starts is null)
            Mix(0.15 * seconds);
        BreedTogether(Math.Min(BreedingPart * seconds, FirstBreedingSeconds));
        if (_best.Starts is null || _builder.Network.HasWindows)
            TakeTurns(seconds);
        else
            Race(seconds);
    }

    /// <summary>One proves, the others breed for a while and then prove too, each in a way of its own.</summary>
    private void Race(double seconds)
    {
        if (IsOver)
            return;
        var breedUntil = Math.Min(BreedingPart * seconds, MostBreedingSeconds);
        using var breeding = _effort.Until(() => _best.IsProven || _effort.SecondsPassed >= breedUntil);
        var lanes = Enumerable.Range(0, Math.Max(2, _effort.Limits.Workers)).Select(lane => Task.Run(() =>
        {
            if (lane > 0)
                Breed(new Builder(_builder.Network), lane, long.MaxValue / 2, breeding.Token);
            new FinishProver(_builder.Network, _best, _effort, lane).Run(seconds);
        })).ToArray();
        Task.WaitAll(lanes);
        breeding.Cancel();
    }

    /// <summary>Where time has windows the mixture finds more than breeding does, and both take turns.</summary>
    private void TakeTurns(double seconds)
    {
        Mix(Math.Min(0.15 * seconds, 1.5));
        BreedTogether(Math.Min(BreedingPart * seconds, MostBreedingSeconds));
        Mix(seconds);
    }

    /// <summary>Breeds on as many islands as there are workers.</summary>
    private void BreedTogether(double until)
    {
        if (IsOver || _best.Starts is null || _effort.SecondsPassed >= until)
            return;
        using var stop = _effort.Until(() => _best.IsProven || _effort.SecondsPassed >= until);
        var islands = Enumerable.Range(0, _effort.Limits.Workers)
            .Select(island => Task.Run(() => Breed(island == 0 ? _builder : new Builder(_builder.Network), island, long.MaxValue / 2, stop.Token))).ToArray();
        Task.WaitAll(islands);
        stop.Cancel();
    }

    private void Breed(Builder builder, int island, long mostBuilt, CancellationToken cancel)
    {
        builder.MostPutBack = builder.Network.Count;
        new GeneticSearch(builder, _best.Starts!, new Random(_effort.Limits.Seed * 31 + island), Population).Run(_best.Bound, mostBuilt, _best.Keep, cancel);
    }

    /// <summary>Looks with all that the solver has, from the best known.</summary>
    private void Mix(double until)
    {
        if (IsOver || _effort.SecondsPassed >= until)
            return;
        var most = _best.Starts is null ? _builder.Horizon : _best.Makespan;
        if (_builder.Latest(most) is not { } latest)
        {
            _isImpossible = true;
            return;
        }

        var model = new ScheduleModel(_builder.Network, _builder.Earliest!, latest, _best.Bound, most);
        model.Model.Minimize(model.Makespan);
        if (_best.Starts is { } known)
        {
            model.Timings.Hint(known);
            model.Model.AddHint(model.Makespan, _best.Makespan);
        }

        var (status, bound, starts) = new ConstraintSearch(_effort).Run(model, until, _effort.Limits.Work, _best.Keep);
        if (starts is not null)
            _best.Keep(starts);
        if (status == CpSolverStatus.Infeasible)
            _isImpossible = _best.Starts is null;
        else if (!double.IsInfinity(bound))
            _best.Raise((int)Math.Ceiling(bound - 1e-6));
    }
}
