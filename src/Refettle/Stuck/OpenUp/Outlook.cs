using System.Numerics;

namespace Refettle.Stuck.OpenUp;

/// <summary>What lies ahead when a set of accesses is open while the tries begin.</summary>
internal sealed class Outlook
{
    private readonly Beliefs _beliefs;
    private readonly int[] _numbers;
    private readonly Waiting[] _waiting;
    private readonly FurtherOpening _further;

    /// <param name="first">What is open.</param>
    /// <param name="groups">The joints.</param>
    /// <param name="beliefs">What is believed.</param>
    /// <param name="now">The chances of each place's levels, by these beliefs.</param>
    /// <param name="opening">What opening costs.</param>
    public Outlook(int first, ValueList<Group> groups, Beliefs beliefs, LevelWeights[] now, OpeningCost opening)
    {
        (First, _beliefs) = (first, beliefs);
        Certain = opening.Of(first) + groups.Sum(group => CertainOf(group, now));
        _numbers = [.. Enumerable.Range(0, groups.Count).Where(number => groups[number].Waiting(first).More != 0)];
        _waiting = [.. _numbers.Select(number => groups[number].Waiting(first))];
        _further = new(first, _waiting, opening);
        Outcomes = _waiting.Aggregate(1L, (product, group) => Math.Min(long.MaxValue / 64, product * (group.Count - group.FewestHeld + 1)));
    }

    public int First { get; }

    /// <summary>Expected minutes that do not hang on what is opened later.</summary>
    public double Certain { get; }

    /// <summary>In how many ways the tries can come out.</summary>
    public long Outcomes { get; }

    /// <summary>Exact expectation: every way the tries can come out.</summary>
    public Expectation Exact()
    {
        var sum = new Expectation();
        Enumerate(0, _beliefs.NothingSeen(), new int[_waiting.Length], sum);
        return sum;
    }

    /// <summary>Minutes that hang on what is opened later, for an outcome drawn by chance.</summary>
    public (double Minutes, bool Opens) Of(Scenario scenario)
    {
        Span<LevelWeights> seen = stackalloc LevelWeights[_beliefs.Places];
        seen.Fill(Beliefs.Ones);
        Span<int> held = stackalloc int[_waiting.Length];
        for (var i = 0; i < held.Length; i++)
        {
            var group = _waiting[i];
            held[i] = group.Held(scenario.Levels[group.Place], scenario.Marks[_numbers[i]]);
            seen[group.Place] = seen[group.Place].Times(group.SeenWith(held[i]));
        }

        var (weight, minutes, opens) = Best(seen, held);
        return (minutes / weight, opens);
    }

    private double CertainOf(Group group, LevelWeights[] now)
    {
        var waiting = group.Waiting(First);
        if (waiting.More != 0)
            return waiting.Count * now[group.Place].Dot(waiting.Minutes);
        Span<double> minutes = [0];
        waiting.AddFinishing(waiting.Count, now[group.Place], minutes);
        return minutes[0];
    }

    private void Enumerate(int next, LevelWeights[] seen, int[] held, Expectation sum)
    {
        if (next == _waiting.Length)
        {
            var (weight, minutes, opens) = Best(seen, held);
            if (weight > 0)
                sum.Add(weight, minutes / weight, opens);
            return;
        }

        var (group, before) = (_waiting[next], seen[_waiting[next].Place]);
        for (held[next] = group.FewestHeld; held[next] <= group.Count; held[next]++)
        {
            seen[group.Place] = before.Times(group.SeenWith(held[next]));
            Enumerate(next + 1, seen, held, sum);
        }

        seen[group.Place] = before;
    }

    /// <summary>The chance of being here, the least that it can cost from here times that chance, and
    /// whether more is opened for it.</summary>
    private (double Weight, double Minutes, bool Opens) Best(ReadOnlySpan<LevelWeights> seen, ReadOnlySpan<int> held)
    {
        Span<LevelWeights> joint = stackalloc LevelWeights[_beliefs.Places];
        _beliefs.Joint(seen, joint);
        var weight = joint[0].Sum();
        var (minutes, more) = _further.Least(joint, held, weight);
        return (weight, minutes, more != 0);
    }
}
