namespace Refettle.CloseUp;

/// <summary>The order in which the fasteners of one joint are tightened. Places are numbered from 1.
/// Loosening goes the other way round.</summary>
/// <remarks>Common practice where the maker shows no order; the maker's order comes first.</remarks>
public static class TighteningSequence
{
    /// <summary>The most fasteners that are ordered.</summary>
    public const int Most = 200;

    /// <summary>Fasteners on a circle, numbered around it: always across to the far side.</summary>
    /// <remarks>Even counts go in opposite pairs, counts of four and their multiples in crosses (as the legacy pattern of ASME PCC-1,
    /// from memory); odd counts take the longest step that meets all, which is the star of a five-bolt wheel.</remarks>
    /// <param name="count">1 to <see cref="Most"/>.</param>
    public static ValueList<int> Star(int count)
    {
        Guard(count);
        return count % 2 == 1 ? Stepped(count) : count % 4 == 0 ? Crosses(count / 4) : Pairs(count / 2);
    }

    /// <summary>Fasteners in rows and columns, numbered row by row: from the middle outward, each pair through the middle.</summary>
    /// <param name="rows">1 or more.</param>
    /// <param name="columns">1 or more; rows · columns at most <see cref="Most"/>.</param>
    public static ValueList<int> Spiral(int rows, int columns)
    {
        Guard(rows * columns);
        return Enumerable.Range(0, rows * columns)
            .Select(place => (Place: place + 1, Spot: Spot(place / columns, place % columns, rows, columns)))
            .OrderBy(one => one.Spot.Ring).ThenBy(one => one.Spot.Pair).ThenBy(one => one.Place)
            .Select(one => one.Place).ToValueList();
    }

    /// <summary>Once around, place by place: the last pass.</summary>
    public static ValueList<int> Around(int count)
    {
        Guard(count);
        return Enumerable.Range(1, count).ToValueList();
    }

    private static ValueList<int> Stepped(int count)
    {
        var step = Enumerable.Range(1, Math.Max(1, count / 2)).Last(candidate => Common(candidate, count) == 1);
        return Enumerable.Range(0, count).Select(turn => turn * step % count + 1).ToValueList();
    }

    private static ValueList<int> Crosses(int quarter) =>
        OddsFirst(quarter).SelectMany(start => new[] { start, start + 2 * quarter, start + quarter, start + 3 * quarter }).ToValueList();

    /// <summary>Opposite pairs, turned round where the next place would lie beside the last.</summary>
    private static ValueList<int> Pairs(int half)
    {
        var order = new List<int>();
        foreach (var start in OddsFirst(half))
        {
            var isBeside = order.Count > 0 && Math.Abs(order[^1] - start) == 1;
            order.AddRange(isBeside ? [start + half, start] : [start, start + half]);
        }

        return order.ToValueList();
    }

    private static IEnumerable<int> OddsFirst(int starts) =>
        Enumerable.Range(1, starts).OrderByDescending(start => start % 2).ThenBy(start => start);

    /// <summary>How far out a place is, and which pair through the middle it belongs to.</summary>
    private static (int Ring, int Pair) Spot(int row, int column, int rows, int columns)
    {
        var (down, across) = (2 * row - (rows - 1), 2 * column - (columns - 1));
        var mirrored = (rows - 1 - row) * columns + (columns - 1 - column);
        return (Math.Max(Math.Abs(down), Math.Abs(across)), Math.Min(row * columns + column, mirrored));
    }

    private static int Common(int one, int other) => other == 0 ? one : Common(other, one % other);

    private static void Guard(int count)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, Most);
    }
}
