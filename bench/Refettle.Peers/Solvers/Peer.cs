using System.Diagnostics;
using Refettle.Access.Derivation;

namespace Refettle.Peers.Solvers;

/// <summary>Another way to solve derivation problems, to measure against.</summary>
public interface IPeer
{
    string Name { get; }

    /// <summary>What stands in its table column: how it solves, and what is counted.</summary>
    string About { get; }

    PeerRun Solve(DerivationProblem problem, TimeSpan most);
}

/// <summary>Another way to solve derivation problems with limits.</summary>
public interface ILimitedPeer : IPeer
{
    PeerRun Solve(LimitedProblem limited, TimeSpan most);
}

/// <summary>One run of a peer.</summary>
/// <param name="Cost">Of the best solution; null when none was found.</param>
/// <param name="IsProven">No solution costs less, in the peer's own problem.</param>
/// <param name="IsFounded">Its solution supports itself from the ground up.</param>
/// <param name="Time">What it took; the whole time allowed when it did not finish.</param>
public sealed record PeerRun(long? Cost, bool IsProven, bool IsFounded, TimeSpan Time)
{
    /// <summary>Times a solve that gives the ways chosen and whether they are proven best.</summary>
    internal static PeerRun Of(DerivationProblem problem, TimeSpan most, Func<(int[]? WayOf, bool IsProven)> solve)
    {
        var clock = Stopwatch.StartNew();
        var (wayOf, isProven) = solve();
        var time = clock.Elapsed;
        long? cost = wayOf is null ? null : wayOf.Where(way => way >= 0).Sum(way => problem.Cost[way]);
        return new(cost, isProven, wayOf is not null && Foundation.Loose(problem, wayOf).Count == 0, isProven ? time : most);
    }
}
