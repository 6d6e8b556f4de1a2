using System.Numerics;

namespace Refettle.Stuck.OpenUp;

/// <summary>What lies ahead when a set of accesses is open while the tries begin.</summary>
internal sealed class Outlook
{
    private readonly int _first;
    private readonly Beliefs _beliefs;
    private readonly OpeningCost _opening;
    private readonly List<Waiting> _waiting = [];

    public Outlook(int first, ValueList<Group> groups, Beliefs beliefs, OpeningCost opening)
    {
        (_first, _beliefs, _opening) = (first, beliefs, opening);
        var places = beliefs.Joint(Enumerable.Repeat(Beliefs.Ones, beliefs.Places).ToArray());
        Certain = opening.Of(first);
        foreach (var group in groups)
            Add(group, places[group.Place]);
        Outcomes = _waiting.Aggregate(1L, (product, group) => Math.Min(long.MaxValue / 64, product * (group.Free is null ? 1 : group.Count + 1)));
    }

    /// <summary>Expected minutes that do not hang on what is opened later.</summary>
    public double Certain { get; private set; }

    /// <summary>In how many ways the tries can come out.</summary>
    public long Outcomes { get; }

    /// <summary>Exact expectation: every way the tries can come out.</summary>
    public Expectation Exact()
    {
        var sum = new Expectation();
        Enumerate(0, Enumerable.Repeat(Beliefs.Ones, _beliefs.Places).ToArray(), new int[_waiting.Count], sum);
        return sum;
    }

    /// <summary>Outcomes drawn by chance.</summary>
    public Expectation Sampled(int draws, Random random)
    {
        var sum = new Expectation();
        for (var draw = 0; draw < draws; draw++)
        {
            var levels = _beliefs.Draw(random);
            var held = _waiting.Select(group => group.Draw(levels[group.Place], random)).ToArray();
            var seen = Enumerable.Range(0, _beliefs.Places).Select(_ => (double[])[.. Beliefs.Ones]).ToArray();
            for (var i = 0; i < held.Length; i++)
                _waiting[i].Take(held[i], seen[_waiting[i].Place], withPaths: false);
            var weight = _beliefs.Weight(seen);
            var (minutes, opens) = Best(seen, held);
            sum.Add(1.0 / draws, minutes / weight, opens);
        }

        return sum;
    }

    private void Add(Group group, double[] place)
    {
        var pass = group.Tables.PassOf(_first);
        if ((group.Tables.Wants & ~_first) == 0)
        {
            Certain += group.Count * Mean(group.OverLevels(group.Tables.Finish(_first, _first)!), place);
            return;
        }

        Certain += group.Count * Mean(group.OverLevels(pass.Minutes), place);
        _waiting.Add(new(group, pass, _first));
    }

    private void Enumerate(int next, double[][] seen, int[] held, Expectation sum)
    {
        if (next == _waiting.Count)
        {
            var weight = _beliefs.Weight(seen);
            if (weight <= 0)
                return;
            var (minutes, opens) = Best(seen, held);
            sum.Add(weight, minutes / weight, opens);
            return;
        }

        var group = _waiting[next];
        var before = seen[group.Place];
        for (held[next] = group.Free is null ? group.Count : 0; held[next] <= group.Count; held[next]++)
        {
            seen[group.Place] = [.. before];
            group.Take(held[next], seen[group.Place], withPaths: true);
            Enumerate(next + 1, seen, held, sum);
        }

        seen[group.Place] = before;
    }

    /// <summary>The least that it can cost from here, times the chance of being here.</summary>
    private (double Minutes, bool Opens) Best(double[][] seen, int[] held)
    {
        var joint = _beliefs.Joint(seen);
        var weight = joint[0].Sum();
        var costs = new double[_waiting.Count][];
        var useful = 0;
        for (var i = 0; i < held.Length; i++)
        {
            if (held[i] == 0)
                continue;
            costs[i] = _waiting[i].Finishing(held[i], joint[_waiting[i].Place]);
            useful |= _waiting[i].More;
        }

        return BitOperations.PopCount((uint)useful) <= OpenUpPlanner.MostExact ? OfAll(useful, Minutes) : Descend(useful, Minutes);

        double Minutes(int more)
        {
            var minutes = weight * _opening.Later(_first, _first | more);
            for (var i = 0; i < held.Length; i++)
                minutes += held[i] == 0 ? 0 : costs[i][_waiting[i].Index(more)];
            return minutes;
        }
    }

    private static (double Minutes, bool Opens) OfAll(int useful, Func<int, double> minutes)
    {
        var best = (Minutes: double.PositiveInfinity, Opens: false);
        for (var more = useful; ; more = (more - 1) & useful)
        {
            if (minutes(more) is var these && these <= best.Minutes)
                best = (these, more != 0);
            if (more == 0)
                return best;
        }
    }

    /// <summary>A good set, not always the best: from everything, one is left closed after the other while that helps.</summary>
    private static (double Minutes, bool Opens) Descend(int useful, Func<int, double> minutes)
    {
        var best = (More: useful, Minutes: minutes(useful));
        for (var from = best; ; from = best)
        {
            for (var rest = from.More; rest != 0; rest &= rest - 1)
            {
                var less = from.More & ~(rest & -rest);
                if (minutes(less) is var these && these <= best.Minutes)
                    best = (less, these);
            }

            if (best == from)
                break;
        }

        return minutes(0) <= best.Minutes ? (minutes(0), false) : (best.Minutes, best.More != 0);
    }

    private static double Mean(double[] values, double[] weights)
    {
        var sum = 0.0;
        for (var level = 0; level < values.Length; level++)
            sum += values[level] * weights[level];
        return sum;
    }
}
