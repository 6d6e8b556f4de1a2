namespace Refettle.Stuck.OpenUp;

/// <summary>Joints, alike, that more could be opened for once their first tries have failed.</summary>
internal sealed class Waiting
{
    private readonly LevelWeights[] _seen;
    private readonly LevelWeights[] _finishing;
    private readonly bool[] _isSure;
    private readonly double[]? _free;

    /// <param name="group">The joints.</param>
    /// <param name="first">What is open during the first tries.</param>
    public Waiting(Group group, int first)
    {
        var pass = group.Tables.PassOf(first);
        (Count, Place, More) = (group.Count, group.Place, group.Tables.Wants & ~first);
        _free = pass.Rungs.Count == 0 ? null : group.OverLevels(pass.Free);
        Minutes = new(group.OverLevels(pass.Minutes));
        var holds = Array.ConvertAll(_free ?? new double[SeizureModel.Levels], free => 1 - free);
        _seen = [.. Enumerable.Range(0, Count + 1).Select(held => Seen(holds, held))];
        var finishing = Bits.Subsets(More).Select(more => group.Tables.Finish(first, first | more)).ToList();
        _isSure = [.. finishing.Select(minutes => minutes is not null)];
        _finishing = [.. finishing.Select(minutes => minutes is null
            ? default
            : new LevelWeights([.. group.OverLevels(minutes).Zip(holds, (one, held) => held > 0 ? one / held : 0)]))];
    }

    public int Count { get; }

    public int Place { get; }

    /// <summary>The accesses that are still closed and matter to them.</summary>
    public int More { get; }

    /// <summary>Expected minutes of the first tries of one of them, by the place's level.</summary>
    public LevelWeights Minutes { get; }

    /// <summary>The least of them that can hold: all, when nothing is tried first.</summary>
    public int FewestHeld => _free is null ? Count : 0;

    /// <summary>The chance that so many of them held, by the place's level.</summary>
    public ref readonly LevelWeights SeenWith(int held) => ref _seen[held];

    /// <summary>Adds the expected minutes to finish those that held, times the chance of being there, for
    /// each subset of <see cref="More"/>.</summary>
    /// <param name="place">The chances of the place's levels together with what was seen.</param>
    public void AddFinishing(int held, in LevelWeights place, Span<double> minutes)
    {
        for (var more = 0; more < _finishing.Length; more++)
            minutes[more] += _isSure[more] ? held * place.Dot(_finishing[more]) : double.PositiveInfinity;
    }

    /// <summary>How many hold when each is compared with a mark drawn from 0 to 1.</summary>
    public int Held(int level, double[] marks)
    {
        if (_free is null)
            return Count;
        var held = 0;
        foreach (var mark in marks)
            held += mark >= _free[level] ? 1 : 0;
        return held;
    }

    private LevelWeights Seen(double[] holds, int held)
    {
        var (seen, ways) = (default(LevelWeights), Choose(Count, held));
        for (var level = 0; level < holds.Length; level++)
            seen[level] = _free is null ? 1 : ways * Math.Pow(holds[level], held) * Math.Pow(_free[level], Count - held);
        return seen;
    }

    private static double Choose(int all, int some)
    {
        var ways = 1.0;
        for (var i = 1; i <= some; i++)
            ways = ways * (all - some + i) / i;
        return ways;
    }
}
