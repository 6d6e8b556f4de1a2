using System.Diagnostics;
using Refettle.Access.Derivation;

namespace Refettle.Peers.Solvers;

/// <summary>The unreduced model, solved again after each round of cutting only the circles it used.</summary>
public sealed class LoopCuttingHighs : IPeer
{
    public string Name => "loop-cutting HiGHS";

    public string About => "aggregated-link model, unreduced, solved again and again; each round cuts the unfounded facts it used";

    /// <summary>Solves that the last run took.</summary>
    public int Rounds { get; private set; }

    public PeerRun Solve(DerivationProblem problem, TimeSpan most) => PeerRun.Of(problem, most, () => CutUntilFounded(problem, most));

    private (int[]? WayOf, bool IsProven) CutUntilFounded(DerivationProblem problem, TimeSpan most)
    {
        var clock = Stopwatch.StartNew();
        using var model = new AggregatedModel(problem);
        for (Rounds = 1; clock.Elapsed < most; Rounds++)
        {
            var (wayOf, isProven, _) = model.Solve(most - clock.Elapsed);
            if (wayOf is null || !isProven)
                return (wayOf, false);
            var loose = Foundation.Loose(problem, wayOf);
            if (loose.Count == 0)
                return (wayOf, true);
            model.Cut(loose);
        }

        return (null, false);
    }
}
