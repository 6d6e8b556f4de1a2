using Refettle.Timeline.Scheduling;
using Refettle.Timeline.Scheduling.Proving;

namespace Refettle.Solvers.Scheduling;

/// <summary>Looks for a proof that nothing finishes earlier than the best known, and for what does. While the bound is more than one below
/// the best, the first worker leaves out the finish just below: that two below is too early shows far sooner if the best cannot be
/// improved, and if it can, that worker is ahead. The others take turns: they look near schedules as good as the best, and breed
/// more.</summary>
/// <param name="breed">Breeds until it is stopped; told for which worker.</param>
internal sealed class FinishProof(Builder builder, BestFinish best, Effort effort, Action<int, CancellationToken> breed)
{
    private readonly Exchange _exchange = new(effort.Limits.Workers);
    private readonly ProofSearch?[] _searches = new ProofSearch?[effort.Limits.Workers];
    private readonly int[] _below = new int[effort.Limits.Workers];
    private readonly int[] _wanted = new int[effort.Limits.Workers];

    /// <summary>Goes on where it ended last, until the best is proven or it is stopped.</summary>
    public void Run(ProofTurns turns, CancellationToken cancel)
    {
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        effort.Together(worker =>
        {
            while (!stop.IsCancellationRequested && !best.IsProven)
                TakeTurn(worker, turns, stop.Token);
            stop.Cancel();
        });
    }

    private void TakeTurn(int worker, ProofTurns turns, CancellationToken stop)
    {
        if (worker == 0)
        {
            Search(worker, () => null, turns.AreEarly, stop);
            return;
        }

        For(turns.SecondsOfSearch, part => Search(worker, best.OneOfEquals, turns.AreEarly, part), stop);
        For(turns.SecondsOfBreeding, part => breed(worker, part), stop);
    }

    private void For(double seconds, Action<CancellationToken> run, CancellationToken stop)
    {
        if (seconds <= 0 || stop.IsCancellationRequested || best.IsProven)
            return;
        var until = effort.SecondsPassed + seconds;
        using var part = effort.Until(() => effort.SecondsPassed >= until, stop);
        run(part.Token);
        part.Cancel();
    }

    private void Search(int worker, Func<int[]?> likely, bool isEarly, CancellationToken stop)
    {
        int Wanted()
        {
            var makespan = best.Makespan;
            if (isEarly)
                _wanted[worker] = makespan - _below[worker];
            return Math.Min(_wanted[worker], makespan - 1);
        }

        if ((_searches[worker] ??= Begin(worker)) is not { } search || !search.Run(Wanted, likely, best.Keep, stop))
            return;
        best.Raise(Wanted() + 1);
        _searches[worker] = null;
    }

    /// <returns>Null when already lags exclude what is wanted, which is noted.</returns>
    private ProofSearch? Begin(int worker)
    {
        var makespan = best.Makespan;
        var isAhead = worker == 0 && effort.Limits.Workers > 1 && makespan - best.Bound > 1;
        _below[worker] = isAhead ? 2 : 1;
        _wanted[worker] = makespan - _below[worker];
        if (builder.Latest(_wanted[worker]) is { } latest)
            return new(builder.Network, builder.Earliest!, latest, effort.Limits.Seed, _exchange, worker);
        best.Raise(_wanted[worker] + 1);
        return null;
    }
}
