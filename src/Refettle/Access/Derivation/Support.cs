namespace Refettle.Access.Derivation;

/// <summary>Which facts are called for while goals change their ways, and what that costs and uses up.</summary>
/// <remarks>Each fact but the goals has one way, chosen beforehand so that none support each other in a circle.</remarks>
internal sealed class Support
{
    private readonly LimitedProblem _limited;
    private readonly int[] _wayOf;
    private readonly int[] _calls;

    /// <param name="limited">The problem.</param>
    /// <param name="wayOf">For each fact the way it takes when it is called for.</param>
    public Support(LimitedProblem limited, int[] wayOf)
    {
        (_limited, _wayOf, _calls) = (limited, [.. wayOf], new int[wayOf.Length]);
        Used = new long[limited.Limits.Count];
        foreach (var goal in limited.Problem.Goals)
            Call(goal);
    }

    public long Cost { get; private set; }

    /// <summary>What is used up, by limit.</summary>
    public long[] Used { get; }

    public int WayOf(int goal) => _wayOf[goal];

    public bool IsKept() => Excess() == 0;

    /// <summary>By which shares of the limits more is used than there is, in all.</summary>
    public double Excess()
    {
        var sum = 0.0;
        for (var limit = 0; limit < Used.Length; limit++)
            sum += Math.Max(0, Used[limit] - _limited.Limits[limit].Most) / (_limited.Limits[limit].Most + 1.0);
        return sum;
    }

    /// <summary>Gives a goal another way.</summary>
    public void Switch(int goal, int way)
    {
        Recall(goal);
        _wayOf[goal] = way;
        Call(goal);
    }

    /// <summary>The solution as it stands.</summary>
    public int[] Solution() => [.. _wayOf.Select((way, fact) => _calls[fact] > 0 ? way : -1)];

    private void Call(int fact)
    {
        var next = new Stack<int>([fact]);
        while (next.TryPop(out var called))
        {
            if (_calls[called]++ == 0)
                Count(called, 1, next);
        }
    }

    private void Recall(int fact)
    {
        var next = new Stack<int>([fact]);
        while (next.TryPop(out var recalled))
        {
            if (--_calls[recalled] == 0)
                Count(recalled, -1, next);
        }
    }

    private void Count(int fact, int sign, Stack<int> next)
    {
        var way = _wayOf[fact];
        Cost += sign * _limited.Problem.Cost[way];
        for (var limit = 0; limit < Used.Length; limit++)
            Used[limit] += sign * _limited.Limits[limit].Use[way];
        foreach (var need in _limited.Problem.Needs[way])
            next.Push(need);
    }
}
