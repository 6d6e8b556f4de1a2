using Google.OrTools.Sat;
using Refettle.Timeline.Scheduling;

namespace Refettle.Solvers.Scheduling;

/// <summary>Looks for the earliest finish.</summary>
internal sealed class FinishSearch
{
    private const int Population = 100;

    /// <summary>Activities placed while breeding, for each unit of work that the solver is given.</summary>
    private const double PlacedPerWork = 1_000_000;

    /// <summary>Breeding and proving take turns: what is easy is proven soon, and what is hard is proven from a better schedule. Each ends at a
    /// part of the time, or after some seconds if those are fewer.</summary>
    private static readonly (bool IsBreeding, double Part, double Seconds)[] Turns = [(true, 0.05, 0.05), (false, 0.15, 1.5), (true, 0.5, 15), (false, 1, double.MaxValue)];

    private readonly ScheduleQuestion _question;
    private readonly Effort _effort;
    private readonly IProgress<ScheduleAnswer>? _progress;
    private readonly Builder _builder;
    private readonly Lock _lock = new();
    private int[]? _best;
    private int _makespan = WorkTime.Never;
    private int _bound;
    private bool _isImpossible;

    public FinishSearch(ScheduleQuestion question, Effort effort, IProgress<ScheduleAnswer>? progress)
    {
        (_question, _effort, _progress) = (question, effort, progress);
        _builder = new(Network.Of(question.Project));
        _bound = LowerBounds.Of(_builder);
        _isImpossible = _builder.Earliest is null;
    }

    public Builder Builder => _builder;

    public bool IsImpossible => _isImpossible;

    public void Run(double share)
    {
        if (_isImpossible)
            return;
        var seconds = _effort.Limits.Time.TotalSeconds * share;
        First();
        if (_effort.Limits.Work is { } work)
        {
            if (_best is not null && _makespan > _bound)
                Breed(_builder, 0, (long)(work * PlacedPerWork / _builder.Network.Count), _effort.Cancel);
            if (_makespan > _bound)
                Prove(seconds);
            return;
        }

        foreach (var (isBreeding, part, most) in Turns)
        {
            var until = Math.Min(part * seconds, most);
            if (_isImpossible || _makespan <= _bound || _effort.SecondsPassed >= until)
                continue;
            if (!isBreeding)
                Prove(until);
            else if (_best is not null)
                Breed(until);
        }
    }

    public ScheduleAnswer Answer()
    {
        if (_best is null)
            return new(_isImpossible ? ScheduleStatus.Impossible : ScheduleStatus.Unknown, null, _bound, [], []);
        var schedule = _builder.ToSchedule(_best);
        var status = _makespan <= _bound && _question.Later.Count == 0 ? ScheduleStatus.Optimal : ScheduleStatus.Feasible;
        return new(status, schedule, _bound, _question.Later.Select(aim => aim.Cost(schedule)).ToValueList(), []);
    }

    private void First()
    {
        var first = new FirstSchedule(_builder, new Random(_effort.Limits.Seed));
        if (_question.Known is { } known)
            first.From([.. known.Starts]);
        first.Run(Math.Min(200, 20_000 / _builder.Network.Count), _bound, _effort.Cancel);
        if (first.Best is { } starts)
            Keep(starts);
    }

    /// <summary>Breeds on as many islands as there are workers.</summary>
    private void Breed(double until)
    {
        using var stop = _effort.Until(until);
        var islands = Enumerable.Range(0, _effort.Limits.Workers)
            .Select(island => Task.Run(() =>
            {
                Breed(island == 0 ? _builder : new Builder(_builder.Network), island, long.MaxValue / 2, stop.Token);
                if (_makespan <= _bound)
                    stop.Cancel();
            })).ToArray();
        Task.WaitAll(islands);
        stop.Cancel();
    }

    private void Breed(Builder builder, int island, long mostBuilt, CancellationToken cancel)
    {
        builder.MostPutBack = builder.Network.Count;
        new GeneticSearch(builder, _best!, new Random(_effort.Limits.Seed * 31 + island), Population).Run(_bound, mostBuilt, Keep, cancel);
    }

    private void Prove(double until)
    {
        var most = _best is null ? _builder.Horizon : _makespan;
        if (_builder.Latest(most) is not { } latest)
        {
            _isImpossible = true;
            return;
        }

        var model = new ScheduleModel(_builder.Network, _builder.Earliest!, latest, _bound, most);
        model.Model.Minimize(model.Makespan);
        if (_best is not null)
        {
            model.Timings.Hint(_best);
            model.Model.AddHint(model.Makespan, _makespan);
        }

        var (status, bound, starts) = new ConstraintSearch(_effort).Run(model, until, _effort.Limits.Work, _best is not null && !_builder.Network.HasWindows, Keep);
        if (starts is not null)
            Keep(starts);
        if (status == CpSolverStatus.Infeasible)
            _isImpossible = _best is null;
        else if (!double.IsInfinity(bound))
            _bound = Math.Max(_bound, (int)Math.Min(_makespan, Math.Ceiling(bound - 1e-6)));
    }

    private void Keep(int[] starts)
    {
        var makespan = Makespan(starts);
        lock (_lock)
        {
            if (makespan >= _makespan)
                return;
            (_best, _makespan) = ([.. starts], makespan);
            _progress?.Report(Answer());
        }
    }

    private int Makespan(int[] starts) => starts.Select((start, i) => _builder.Network.Finish(i, start)).Max();
}
