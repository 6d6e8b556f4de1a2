using Refettle.Access.Derivation;

namespace Refettle.Peers.Solvers;

/// <summary>The unreduced model, once, with circular support allowed: an easier problem.</summary>
public sealed class PlainHighs : IPeer
{
    public string Name => "plain HiGHS";

    public string About => "aggregated-link model, unreduced, one solve, circular support allowed (an easier problem)";

    public PeerRun Solve(DerivationProblem problem, TimeSpan most) => PeerRun.Of(problem, most, () =>
    {
        using var model = new AggregatedModel(problem);
        var (wayOf, isProven, _) = model.Solve(most);
        return (wayOf, isProven);
    });
}
