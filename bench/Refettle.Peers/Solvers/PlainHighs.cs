using Refettle.Access.Derivation;

namespace Refettle.Peers.Solvers;

/// <summary>The unreduced model, once, with circular support allowed: an easier problem.</summary>
public sealed class PlainHighs : ILimitedPeer
{
    public string Name => "plain HiGHS";

    public string About => "aggregated-link model, unreduced, one solve, circular support allowed (an easier problem)";

    public PeerRun Solve(DerivationProblem problem, TimeSpan most) => Solve(new LimitedProblem(problem, []), most);

    public PeerRun Solve(LimitedProblem limited, TimeSpan most) => PeerRun.Of(limited.Problem, most, () =>
    {
        using var model = new AggregatedModel(limited.Problem, limited.Limits);
        var (wayOf, isProven, _) = model.Solve(most);
        return (wayOf, isProven);
    });
}
