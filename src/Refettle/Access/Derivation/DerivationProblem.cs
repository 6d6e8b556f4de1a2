using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace Refettle.Access.Derivation;

/// <summary>A least-cost derivation in an AND/OR graph: make the goals true by choosing one way for each fact that is made true.</summary>
/// <remarks>
/// A way makes its fact true once all its needs are true. A solution is a set of facts with one way each, holding the goals, in which
/// every need of a chosen way is in the set and no facts support each other in a circle. Its cost is the sum of the chosen ways' costs.
/// Facts and ways are numbered from 0.
/// </remarks>
public sealed class DerivationProblem
{
    private readonly int[][] _waysOf;
    private int[][]? _usersOf;

    /// <summary>The arrays are taken over, not copied: do not change them afterwards.</summary>
    /// <param name="factCount">How many facts there are.</param>
    /// <param name="factOf">For each way, the fact it makes true.</param>
    /// <param name="needs">For each way, the facts it needs: distinct, in any order.</param>
    /// <param name="cost">For each way, its cost in hundredths of a minute, 0 or more.</param>
    /// <param name="goals">The facts to make true: distinct.</param>
    public DerivationProblem(int factCount, int[] factOf, int[][] needs, long[] cost, int[] goals)
    {
        if (factOf.Length != needs.Length || factOf.Length != cost.Length)
            throw new ArgumentException("Every way has one fact, one list of needs and one cost.");
        FactCount = factCount;
        FactOf = ImmutableCollectionsMarshal.AsImmutableArray(factOf);
        Needs = [.. needs.Select(ImmutableCollectionsMarshal.AsImmutableArray)];
        Cost = ImmutableCollectionsMarshal.AsImmutableArray(cost);
        Goals = ImmutableCollectionsMarshal.AsImmutableArray(goals);
        _waysOf = Group(factCount, factOf);
    }

    public int FactCount { get; }

    public int WayCount => FactOf.Length;

    public ImmutableArray<int> FactOf { get; }

    public ImmutableArray<ImmutableArray<int>> Needs { get; }

    public ImmutableArray<long> Cost { get; }

    public ImmutableArray<int> Goals { get; }

    /// <summary>The ways that make a fact true.</summary>
    public ReadOnlySpan<int> WaysOf(int fact) => _waysOf[fact];

    /// <summary>The ways that need a fact.</summary>
    public ReadOnlySpan<int> UsersOf(int fact) => (_usersOf ??= GroupUsers())[fact];

    private int[][] GroupUsers()
    {
        var count = new int[FactCount];
        foreach (var needs in Needs)
        {
            foreach (var need in needs)
                count[need]++;
        }

        var groups = new int[FactCount][];
        for (var fact = 0; fact < FactCount; fact++)
            groups[fact] = new int[count[fact]];
        for (var way = WayCount - 1; way >= 0; way--)
        {
            foreach (var need in Needs[way])
                groups[need][--count[need]] = way;
        }

        return groups;
    }

    private static int[][] Group(int factCount, int[] factOf)
    {
        var count = new int[factCount];
        foreach (var fact in factOf)
            count[fact]++;
        var groups = new int[factCount][];
        for (var fact = 0; fact < factCount; fact++)
            groups[fact] = new int[count[fact]];
        for (var way = factOf.Length - 1; way >= 0; way--)
            groups[factOf[way]][--count[factOf[way]]] = way;
        return groups;
    }
}

/// <summary>The answer to a <see cref="DerivationProblem"/>.</summary>
/// <param name="WayOf">For each fact the chosen way, or -1 when the fact is not made true. Null when there is no solution at all,
/// or none was found in time.</param>
/// <param name="Cost">Sum of the chosen ways' costs.</param>
/// <param name="Bound">No solution costs less; equal to <paramref name="Cost"/> when proven optimal,
/// <see cref="long.MaxValue"/> when proven impossible.</param>
public sealed record DerivationAnswer(int[]? WayOf, long Cost, long Bound)
{
    public static DerivationAnswer Impossible { get; } = new(null, long.MaxValue, long.MaxValue);

    public bool IsOptimal => WayOf is not null && Cost == Bound;
}

/// <summary>Solves derivation problems.</summary>
public interface IDerivationSolver
{
    /// <summary>The best solution and bound reached when it is proven or the token is cancelled.</summary>
    DerivationAnswer Solve(DerivationProblem problem, CancellationToken cancel = default);
}
