namespace Refettle.Access.Derivation;

/// <summary>A derivation problem whose solutions may use up only so much.</summary>
public sealed record LimitedProblem(DerivationProblem Problem, ValueList<UseLimit> Limits)
{
    /// <summary>A solution that is known to keep the limits, to begin with: for each fact its way or -1; null when none is known.</summary>
    public int[]? Start { get; init; }

    /// <summary>Whether the chosen ways keep all limits.</summary>
    public bool IsKept(int[] wayOf) => Limits.All(limit => limit.Used(wayOf) <= limit.Most);
}

/// <summary>Something that ways use up and of which there is only so much.</summary>
/// <param name="Use">What each way uses, 0 or more. A way that costs nothing uses nothing.</param>
/// <param name="Most">No solution uses more.</param>
public sealed record UseLimit(long[] Use, long Most)
{
    public long Used(int[] wayOf) => wayOf.Where(way => way >= 0).Sum(way => Use[way]);
}

/// <summary>Solves derivation problems with limits.</summary>
public interface ILimitedSolver
{
    /// <summary>The best solution that keeps the limits, with its bound, when it is proven or the token is cancelled.</summary>
    DerivationAnswer Solve(LimitedProblem limited, CancellationToken cancel = default);

    /// <summary>What one unit more of each limit would save, were facts divisible; null when the limits cannot be kept even then.</summary>
    double[]? Prices(LimitedProblem limited);
}
