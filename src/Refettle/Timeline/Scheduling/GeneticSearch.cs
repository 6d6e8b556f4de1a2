namespace Refettle.Timeline.Scheduling;

/// <summary>Breeds schedules: a population pushed to the left and one pushed to the right take turns, each made from the other by
/// crossing over a stretch of time (the bi-population method of Debels and Vanhoucke, Operations Research 55, 2007).</summary>
internal sealed class GeneticSearch
{
    private const long PatienceAtLeast = 100_000;

    private readonly Builder _builder;
    private readonly Random _random;
    private readonly int _count;
    private readonly long[] _keys;
    private readonly int[] _child;
    private long _built;
    private long _builtAtBetter;
    private int[][] _left;
    private int[][] _right;
    private int[] _leftEnd;
    private int[] _rightEnd;

    public GeneticSearch(Builder builder, int[] seed, Random random, int population)
    {
        (_builder, _random, _count) = (builder, random, builder.Network.Count);
        (_keys, _child) = (new long[_count], new int[_count]);
        (Best, Makespan) = ([.. seed], builder.Makespan(seed));
        _left = [.. Enumerable.Range(0, population).Select(_ => new int[_count])];
        _right = [.. Enumerable.Range(0, population).Select(_ => new int[_count])];
        (_leftEnd, _rightEnd) = (new int[population], new int[population]);
    }

    public int[] Best { get; private set; }

    public int Makespan { get; private set; }

    /// <summary>Breeds until the bound is met, nothing comes of it any more, or it is told to stop.</summary>
    /// <param name="mostBuilt">Schedules built at most.</param>
    /// <param name="better">Told of every better schedule.</param>
    public void Run(int bound, long mostBuilt, Action<int[]>? better = null, CancellationToken cancel = default)
    {
        var end = _builder.Built + mostBuilt;
        (_built, _builtAtBetter) = (_builder.Built, _builder.Built);
        bool GoesOn() => Makespan > bound && _builder.Built < end && IsFruitful && !cancel.IsCancellationRequested;
        while (GoesOn())
        {
            Begin(GoesOn, better);
            for (var idle = 0; idle < 60 && GoesOn();)
            {
                var before = _leftEnd.Sum(end => (long)end) + Makespan;
                Breed(_left, _leftEnd, _right, _rightEnd, toRight: true, GoesOn, better);
                Breed(_right, _rightEnd, _left, _leftEnd, toRight: false, GoesOn, better);
                idle = _leftEnd.Sum(end => (long)end) + Makespan < before ? 0 : idle + 1;
            }
        }
    }

    /// <summary>It gives up when nothing better has come for long, and for longer than the best took.</summary>
    private bool IsFruitful => _builder.Built - _builtAtBetter < Math.Max(PatienceAtLeast, 2 * (_builtAtBetter - _built));

    /// <summary>A new population: the best so far blurred more and more.</summary>
    private void Begin(Func<bool> goesOn, Action<int[]>? better)
    {
        for (var member = 0; member < _left.Length; member++)
        {
            (_leftEnd[member], _rightEnd[member]) = (WorkTime.Never, WorkTime.Never);
            var width = Makespan * (0.1 + 0.9 * member / _left.Length);
            for (var i = 0; i < _count; i++)
                _keys[i] = Best[i] * 16L + (long)(16 * width * _random.NextDouble());
            if (!goesOn())
                continue;
            _leftEnd[member] = Build(toRight: false, Makespan, better);
            _child.CopyTo(_left[member], 0);
        }
    }

    /// <summary>Each member has two children with its mate, one with either as the mother; the better one takes its place on the other side.
    /// No child is changed at random: here that does harm.</summary>
    private void Breed(int[][] from, int[] fromEnd, int[][] to, int[] toEnd, bool toRight, Func<bool> goesOn, Action<int[]>? better)
    {
        for (var member = 0; member < from.Length && goesOn(); member++)
        {
            if (fromEnd[member] >= WorkTime.Never)
                continue;
            from[member].CopyTo(to[member], 0);
            var (end, mate) = (WorkTime.Never, Mate(fromEnd, member));
            foreach (var (mother, father) in ((int, int)[])[(member, mate), (mate, member)])
            {
                Cross(from[mother], from[father], fromEnd[mother], toRight);
                var childEnd = Build(toRight, fromEnd[mother], better);
                if (childEnd > end || childEnd >= WorkTime.Never)
                    continue;
                _child.CopyTo(to[member], 0);
                end = childEnd;
            }

            toEnd[member] = end < WorkTime.Never ? end : fromEnd[member];
        }
    }

    private int Mate(int[] end, int member)
    {
        var (one, other) = (_random.Next(end.Length), _random.Next(end.Length));
        var mate = end[one] <= end[other] ? one : other;
        return mate == member || end[mate] >= WorkTime.Never ? member : mate;
    }

    /// <summary>Keys: outside a stretch of time the order of one parent, inside it that of the other.</summary>
    private void Cross(int[] mother, int[] father, int end, bool toRight)
    {
        var length = Math.Max(1, (int)(end * (0.25 + 0.5 * _random.NextDouble())));
        var from = _random.Next(Math.Max(1, end - length));
        for (var i = 0; i < _count; i++)
        {
            var (at, other) = toRight ? (_builder.Network.Finish(i, mother[i]), _builder.Network.Finish(i, father[i])) : (mother[i], father[i]);
            _keys[i] = 4L * (at < from ? at - WorkTime.Never : at > from + length ? at + WorkTime.Never : other) + _random.Next(4);
        }
    }

    /// <summary>Builds a child.</summary>
    /// <returns>How long it is; <see cref="WorkTime.Never"/> when none came of it.</returns>
    private int Build(bool toRight, int finish, Action<int[]>? better)
    {
        if (toRight ? !_builder.Backwards(_keys, finish, _child) : !_builder.Forwards(_keys, _child))
            return WorkTime.Never;
        var makespan = _builder.Makespan(_child);
        if (toRight)
        {
            // Pushed to the right it begins later instead of finishing earlier: what it has gained lies before its first start.
            var gained = FirstStart() - _builder.Floor;
            makespan -= gained;
            for (var i = 0; i < _count; i++)
                _child[i] -= gained;
        }
        else if (makespan < Makespan)
        {
            (Best, Makespan, _builtAtBetter) = ([.. _child], makespan, _builder.Built);
            better?.Invoke(Best);
        }

        return makespan;
    }

    private int FirstStart()
    {
        var first = WorkTime.Never;
        for (var i = 0; i < _count; i++)
            first = Math.Min(first, _child[i]);
        return first;
    }
}
