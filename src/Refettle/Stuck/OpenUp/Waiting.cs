namespace Refettle.Stuck.OpenUp;

/// <summary>Joints, alike, that more could be opened for once their first tries have failed.</summary>
internal sealed class Waiting
{
    private readonly double[] _holds;
    private readonly double[]?[] _finishing;
    private readonly int[] _bits;

    public Waiting(Group group, Pass pass, int first)
    {
        (Count, Place, More) = (group.Count, group.Place, group.Tables.Wants & ~first);
        Free = pass.Rungs.Count == 0 ? null : group.OverLevels(pass.Free);
        _holds = Array.ConvertAll(Free ?? new double[SeizureModel.Levels], free => 1 - free);
        _bits = [.. Enumerable.Range(0, 31).Where(bit => (More & (1 << bit)) != 0)];
        _finishing = [.. Enumerable.Range(0, 1 << _bits.Length).Select(index => group.Tables.Finish(first, first | Mask(index)) is { } minutes
            ? group.OverLevels(minutes).Zip(_holds, (one, holds) => holds > 0 ? one / holds : 0).ToArray() : null)];
    }

    public int Count { get; }

    public int Place { get; }

    /// <summary>The accesses that are still closed and matter to them.</summary>
    public int More { get; }

    /// <summary>The chance that the first tries free one of them, by the place's level; null when there are no first tries.</summary>
    public double[]? Free { get; }

    /// <summary>Takes it in that some of them held.</summary>
    /// <param name="held">How many.</param>
    /// <param name="seen">The chances of what was seen at the place, by its level; changed.</param>
    /// <param name="withPaths">Whether the ways to choose them are counted.</param>
    public void Take(int held, double[] seen, bool withPaths)
    {
        if (Free is null)
            return;
        var ways = withPaths ? Choose(Count, held) : 1;
        for (var level = 0; level < seen.Length; level++)
            seen[level] *= ways * Math.Pow(_holds[level], held) * Math.Pow(Free[level], Count - held);
    }

    /// <summary>Expected minutes to finish those that held, times the chance of being there, for each set of further accesses.</summary>
    public double[] Finishing(int held, double[] place)
    {
        var minutes = new double[_finishing.Length];
        for (var index = 0; index < minutes.Length; index++)
        {
            if (_finishing[index] is not { } one)
                minutes[index] = double.PositiveInfinity;
            else
            {
                for (var level = 0; level < place.Length; level++)
                    minutes[index] += held * place[level] * one[level];
            }
        }

        return minutes;
    }

    /// <summary>The number of a set of accesses among those that matter here.</summary>
    public int Index(int accesses)
    {
        var index = 0;
        for (var i = 0; i < _bits.Length; i++)
            index |= ((accesses >> _bits[i]) & 1) << i;
        return index;
    }

    /// <summary>How many hold, drawn by chance.</summary>
    public int Draw(int level, Random random)
    {
        if (Free is null)
            return Count;
        var held = 0;
        for (var i = 0; i < Count; i++)
            held += random.NextDouble() < Free[level] ? 0 : 1;
        return held;
    }

    private int Mask(int index) => _bits.Where((_, i) => (index & (1 << i)) != 0).Aggregate(0, (mask, bit) => mask | (1 << bit));

    private static double Choose(int all, int some)
    {
        var ways = 1.0;
        for (var i = 1; i <= some; i++)
            ways = ways * (all - some + i) / i;
        return ways;
    }
}
