using System.Numerics;

namespace Refettle.Stuck.OpenUp;

/// <summary>The second decision: what more to open once the first tries have come out.</summary>
/// <remarks>Joints that want the same accesses are summed first; what is then left to weigh is one figure
/// for each set and each such sum.</remarks>
internal sealed class FurtherOpening
{
    private readonly Waiting[] _waiting;
    private readonly int[] _wants;
    private readonly int[] _wantOf;
    private readonly double[][] _minutes;
    private readonly int _all;
    private readonly Func<int, double> _opening;
    private readonly (int More, double Opening, int[] Ranks)[] _sets;

    /// <param name="first">What is open already.</param>
    /// <param name="waiting">The joints that more could be opened for.</param>
    /// <param name="opening">What opening costs.</param>
    public FurtherOpening(int first, Waiting[] waiting, OpeningCost opening)
    {
        _waiting = waiting;
        _wants = [.. waiting.Select(group => group.More).Distinct()];
        _wantOf = [.. waiting.Select(group => Array.IndexOf(_wants, group.More))];
        _minutes = [.. _wants.Select(want => new double[1 << BitOperations.PopCount((uint)want)])];
        _all = _wants.Aggregate(0, (all, want) => all | want);
        _opening = more => opening.Later(first, first | more);
        _sets = BitOperations.PopCount((uint)_all) > OpenUpPlanner.MostExact ? []
            : [.. Bits.Subsets(_all).Select(more => (more, _opening(more), Array.ConvertAll(_wants, want => Bits.Rank(want, more))))];
    }

    /// <summary>The least minutes to open more and finish, times the chance of being here, and what is opened.</summary>
    /// <param name="places">The chances of each place's levels together with what was seen.</param>
    /// <param name="held">How many of each group of joints hold.</param>
    /// <param name="weight">The chance of being here.</param>
    public (double Minutes, int More) Least(ReadOnlySpan<LevelWeights> places, ReadOnlySpan<int> held, double weight)
    {
        foreach (var sum in _minutes)
            Array.Clear(sum);
        for (var i = 0; i < held.Length; i++)
        {
            if (held[i] > 0)
                _waiting[i].AddFinishing(held[i], places[_waiting[i].Place], _minutes[_wantOf[i]]);
        }

        return _sets.Length > 0 ? OfAll(weight) : Descend(weight);
    }

    private (double Minutes, int More) OfAll(double weight)
    {
        var best = (Minutes: double.PositiveInfinity, More: 0);
        foreach (var (more, opening, ranks) in _sets)
        {
            var minutes = weight * opening;
            for (var want = 0; want < ranks.Length; want++)
                minutes += _minutes[want][ranks[want]];
            if (minutes < best.Minutes)
                best = (minutes, more);
        }

        return best;
    }

    /// <summary>A good set, not always the best: from everything, one is left closed after the other while that helps.</summary>
    private (double Minutes, int More) Descend(double weight)
    {
        var best = (Minutes: Of(_all, weight), More: _all);
        for (var from = best; ; from = best)
        {
            for (var rest = from.More; rest != 0; rest &= rest - 1)
            {
                var less = from.More & ~(rest & -rest);
                if (Of(less, weight) is var minutes && minutes <= best.Minutes)
                    best = (minutes, less);
            }

            if (best == from)
                break;
        }

        return Of(0, weight) is var none && none <= best.Minutes ? (none, 0) : best;
    }

    private double Of(int more, double weight) =>
        (weight * _opening(more)) + _wants.Select((want, number) => _minutes[number][Bits.Rank(want, more)]).Sum();
}
