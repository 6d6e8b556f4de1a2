using System.Numerics;

namespace Refettle.Stuck.OpenUp;

/// <summary>Sets of accesses as bits.</summary>
internal static class Bits
{
    /// <summary>All subsets, the empty one first; the n-th holds those members whose place in the set is a bit of n.</summary>
    public static IEnumerable<int> Subsets(int set)
    {
        for (var subset = 0; ; subset = (subset - set) & set)
        {
            yield return subset;
            if (subset == set)
                yield break;
        }
    }

    /// <summary>Which of a set's subsets what it shares with another set is, in the order of <see cref="Subsets"/>.</summary>
    public static int Rank(int set, int other)
    {
        var rank = 0;
        for (var (rest, place) = (set, 0); rest != 0; rest &= rest - 1, place++)
            rank |= ((other >> BitOperations.TrailingZeroCount(rest)) & 1) << place;
        return rank;
    }
}
