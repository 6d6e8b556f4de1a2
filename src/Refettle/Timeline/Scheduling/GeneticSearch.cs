namespace Refettle.Timeline.Scheduling;

/// <summary>Breeds schedules: a population pushed to the left and one pushed to the right take turns, each made from the other by
/// crossing over a stretch of time (the bi-population method of Debels and Vanhoucke, Operations Research 55, 2007).</summary>
internal sealed class GeneticSearch
{
    private const long PatienceAtLeast = 100_000;

    /// <summary>Rounds without gain after which a new population begins.</summary>
    private const int MostIdle = 20;

    private readonly Builder _builder;
    private readonly Random _random;
    private readonly int _count;
    private readonly long[] _keys;
    private readonly int[] _child;
    private readonly Population _left;
    private readonly Population _right;
    private long _built;
    private long _builtAtBetter;

    public GeneticSearch(Builder builder, int[] seed, Random random, int population)
    {
        (_builder, _random, _count) = (builder, random, builder.Network.Count);
        (_keys, _child) = (new long[_count], new int[_count]);
        (Best, Makespan) = ([.. seed], builder.Makespan(seed));
        (_left, _right) = (new(population, _count), new(population, _count));
    }

    /// <summary>Of equals the latest, so that what begins from it comes to other places.</summary>
    public int[] Best { get; }

    public int Makespan { get; private set; }

    /// <summary>Breeds until the bound is met, nothing comes of it any more, or it is told to stop.</summary>
    /// <param name="mostBuilt">Schedules built at most.</param>
    /// <param name="kept">Told of every schedule as good as the best or better; what it is given changes afterwards.</param>
    public void Run(int bound, long mostBuilt, Action<int[]>? kept = null, CancellationToken cancel = default)
    {
        var end = _builder.Built + mostBuilt;
        (_built, _builtAtBetter) = (_builder.Built, _builder.Built);
        bool GoesOn() => Makespan > bound && _builder.Built < end && IsFruitful && !cancel.IsCancellationRequested;
        while (GoesOn())
        {
            Begin(GoesOn, kept);
            for (var idle = 0; idle < MostIdle && GoesOn();)
            {
                var before = _left.Makespans + Makespan;
                Breed(_left, _right, toRight: true, GoesOn, kept);
                Breed(_right, _left, toRight: false, GoesOn, kept);
                idle = _left.Makespans + Makespan < before ? 0 : idle + 1;
            }
        }
    }

    /// <summary>It gives up when nothing better has come for long, and for longer than the best took.</summary>
    private bool IsFruitful => _builder.Built - _builtAtBetter < Math.Max(PatienceAtLeast, 2 * (_builtAtBetter - _built));

    /// <summary>A new population: the best so far blurred more and more. Blurring less ends where it began.</summary>
    private void Begin(Func<bool> goesOn, Action<int[]>? kept)
    {
        for (var member = 0; member < _left.Size; member++)
        {
            var width = Makespan * (0.3 + 1.7 * member / _left.Size);
            for (var i = 0; i < _count; i++)
                _keys[i] = Best[i] * 16L + (long)(16 * width * _random.NextDouble());
            _left.Set(member, _child, goesOn() ? Build(toRight: false, Makespan, kept) : Fitness.None);
        }
    }

    /// <summary>Each member has two children with its mate, one with either as the mother; the
    /// better one takes its place on the other side. No child is changed at random: here that does harm.</summary>
    private void Breed(Population from, Population to, bool toRight, Func<bool> goesOn, Action<int[]>? kept)
    {
        for (var member = 0; member < from.Size && goesOn(); member++)
        {
            to.Set(member, from.Starts(member), from.FitnessOf(member));
            if (from.FitnessOf(member).IsNone)
                continue;
            var (best, mate) = (Fitness.None, from.Mate(member, _random));
            foreach (var (mother, father) in ((int, int)[])[(member, mate), (mate, member)])
            {
                var end = from.FitnessOf(mother).Makespan;
                Cross(from.Starts(mother), from.Starts(father), end, toRight);
                var child = Build(toRight, end, kept);
                if (child.CompareTo(best) >= 0)
                    continue;
                to.Set(member, _child, child);
                best = child;
            }
        }
    }

    /// <summary>Keys: outside a stretch of time the order of one parent, inside it that of the other.</summary>
    private void Cross(int[] mother, int[] father, int end, bool toRight)
    {
        var length = Math.Max(1, (int)(end * (0.25 + 0.5 * _random.NextDouble())));
        var from = _random.Next(Math.Max(1, end - length));
        for (var i = 0; i < _count; i++)
        {
            var (at, other) = toRight
                ? (_builder.Network.Finish(i, mother[i]), _builder.Network.Finish(i, father[i]))
                : (mother[i], father[i]);
            _keys[i] = 4L * (at < from ? at - WorkTime.Never : at > from + length ? at + WorkTime.Never : other) + _random.Next(4);
        }
    }

    /// <summary>Builds a child.</summary>
    private Fitness Build(bool toRight, int finish, Action<int[]>? kept)
    {
        if (toRight ? !_builder.Backwards(_keys, finish, _child) : !_builder.Forwards(_keys, _child))
            return Fitness.None;
        var makespan = _builder.Makespan(_child);
        if (toRight)
            return ToFloor(makespan, finish);
        if (makespan <= Makespan)
            Keep(makespan, kept);
        return new(makespan, Lateness(toRight: false, _builder.Floor));
    }

    private void Keep(int makespan, Action<int[]>? kept)
    {
        _child.CopyTo(Best, 0);
        if (makespan < Makespan)
            (Makespan, _builtAtBetter) = (makespan, _builder.Built);
        kept?.Invoke(Best);
    }

    /// <summary>Pushed to the right a child begins later instead of finishing earlier: what it has gained lies before its first start. It
    /// counts backwards from its end.</summary>
    private Fitness ToFloor(int makespan, int finish)
    {
        var lateness = Lateness(toRight: true, finish);
        var gained = _child.Min() - _builder.Floor;
        for (var i = 0; i < _count; i++)
            _child[i] -= gained;
        return new(makespan - gained, lateness);
    }

    /// <summary>Squares of how long after the beginning each finishes, or of how long before the end each starts.</summary>
    private long Lateness(bool toRight, int from)
    {
        var sum = 0L;
        for (var i = 0; i < _count; i++)
        {
            long after = toRight ? from - _child[i] : _builder.Network.Finish(i, _child[i]) - from;
            sum += after * after;
        }

        return sum;
    }
}
