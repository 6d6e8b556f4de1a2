namespace Refettle.Timeline.Scheduling;

/// <summary>Finds a good schedule at once: priority rules, then seeded samples of them, each built serially and justified to the right
/// and to the left (Valls, Ballestín and Quintanilla, European Journal of Operational Research 165, 2005).</summary>
internal sealed class FirstSchedule(Builder builder, Random random)
{
    private readonly int _count = builder.Network.Count;
    private readonly long[] _keys = new long[builder.Network.Count];
    private readonly int[] _starts = new int[builder.Network.Count];

    /// <summary>The best found; null while there is none.</summary>
    public int[]? Best { get; private set; }

    public int Makespan { get; private set; } = WorkTime.Never;

    /// <summary>Tries the rules, then samples until the bound is met or so many schedules are built.</summary>
    public void Run(int samples, int bound, CancellationToken cancel = default)
    {
        if (builder.Earliest is not { } earliest || _count == 0)
            return;
        var rules = Rules.Of(builder, earliest);
        foreach (var rule in rules)
        {
            rule.CopyTo(_keys, 0);
            if (Makespan > bound && !cancel.IsCancellationRequested)
                Try();
        }

        var last = builder.Built + samples;
        for (var sample = 0; Makespan > bound && builder.Built < last && !cancel.IsCancellationRequested; sample++)
        {
            Blur(rules[sample % rules.Count]);
            Try();
        }
    }

    /// <summary>Keeps the order of a schedule known before as far as it is still possible; what is new comes when it can.</summary>
    public void From(IReadOnlyList<int?> known)
    {
        if (builder.Earliest is not { } earliest || known.Count != _count)
            return;
        for (var i = 0; i < _count; i++)
            _keys[i] = known[i] ?? earliest[i];
        Try();
    }

    private void Blur(long[] rule)
    {
        var width = (rule.Max() - rule.Min()) * random.NextDouble() * 0.3 + 1;
        for (var i = 0; i < _count; i++)
            _keys[i] = rule[i] + (long)(width * random.NextDouble());
    }

    private void Try()
    {
        if (!BuildInTime())
            return;
        Keep();
        while (Justify() is var makespan && makespan < Makespan)
            Keep();
    }

    /// <summary>Builds; what comes too late for its deadline is put before all else, with what it
    /// waits for, and all is built again.</summary>
    private bool BuildInTime()
    {
        for (var hurried = 0; hurried < 20; hurried++)
        {
            if (builder.Forwards(_keys, _starts))
                return true;
            if (builder.Late < 0)
                return false;
            Hurry(builder.Late);
        }

        return false;
    }

    private void Hurry(int late)
    {
        var head = _keys.Max() - _keys.Min() + 1;
        var (seen, waiting) = (new HashSet<int> { late }, new Stack<int>([late]));
        while (waiting.TryPop(out var i))
        {
            _keys[i] -= head;
            foreach (var arc in builder.Network.In[i])
            {
                if (seen.Add(arc.From))
                    waiting.Push(arc.From);
            }
        }
    }

    private int Justify()
    {
        var makespan = builder.Makespan(_starts);
        for (var i = 0; i < _count; i++)
            _keys[i] = builder.Network.Finish(i, _starts[i]);
        if (!builder.Backwards(_keys, makespan, _starts))
            return WorkTime.Never;
        for (var i = 0; i < _count; i++)
            _keys[i] = _starts[i];
        return builder.Forwards(_keys, _starts) ? builder.Makespan(_starts) : WorkTime.Never;
    }

    private void Keep()
    {
        var makespan = builder.Makespan(_starts);
        if (makespan < Makespan)
            (Best, Makespan) = ([.. _starts], makespan);
    }
}
