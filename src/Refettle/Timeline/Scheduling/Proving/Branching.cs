namespace Refettle.Timeline.Scheduling.Proving;

/// <summary>Which question is tried next: whether an activity starts until a time. Those that conflicts led back to of late come first
/// (variable state independent decaying sum: Moskewicz et al. 2001), in a heap.</summary>
internal sealed class Branching
{
    private readonly double _fading;

    private readonly Bounds _bounds;
    private readonly int[] _first;
    private readonly int[] _activity;
    private readonly double[] _praise;
    private readonly int[] _heap;
    private readonly int[] _place;
    private int _count;
    private double _gain = 1;
    private int[]? _likely;
    private int _furthest;

    /// <param name="fading">How much of its praise a question keeps at the next conflict, below 1.</param>
    public Branching(Bounds bounds, double fading, Random random)
    {
        (_bounds, _fading) = (bounds, fading);
        var activities = Enumerable.Range(0, bounds.Sides / 2).ToList();
        _activity = [.. activities.SelectMany(i => Enumerable.Repeat(i, bounds.Latest(i) - bounds.Earliest(i)))];
        _first = [.. activities.Select(i => Array.IndexOf(_activity, i))];
        _praise = new double[_activity.Length];
        (_heap, _place) = (new int[_activity.Length], new int[_activity.Length]);
        Array.Fill(_place, -1);
        // Before there are conflicts, the earliest first; no two alike, so that another seed searches another way.
        for (var question = 0; question < _praise.Length; question++)
            _praise[question] = (1e-6 / (Time(question) + 2)) + (random.NextDouble() * 1e-7);
        for (var question = 0; question < _praise.Length; question++)
            Insert(question);
    }

    /// <summary>From here on starts are tried first that lie nearest to these (solution-based phase saving: Demirović, Chu and Stuckey
    /// 2018); where the search comes further than before, what it came to takes their place (target phases: Biere and Fleury
    /// 2020).</summary>
    /// <param name="likely">Becomes this class's own; null when late comes before early: where there is no room, that shows
    /// soonest.</param>
    public void LookNear(int[]? likely) => (_likely, _furthest) = (likely, int.MinValue);

    /// <summary>The next to try; null when all starts are fixed.</summary>
    public Statement? Next()
    {
        ComeNearer();
        while (_count > 0)
        {
            var question = Pop();
            var (activity, time) = (_activity[question], Time(question));
            if (_bounds.Earliest(activity) <= time && time < _bounds.Latest(activity))
                return _likely?[activity] <= time ? Statement.Until(activity, time) : Statement.From(activity, time + 1);
        }

        return null;
    }

    /// <summary>Notes that a conflict led back to a statement.</summary>
    public void Praise(Statement statement)
    {
        var activity = statement.Side >> 1;
        var time = (statement.Side & 1) == 0 ? statement.Least - 1 : -statement.Least;
        var question = _first[activity] + time - _bounds.RootEarliest(activity);
        _praise[question] += _gain;
        if (_place[question] >= 0)
            Up(_place[question]);
        if (_praise[question] > 1e100)
            Rescale();
    }

    /// <summary>What is praised later counts more.</summary>
    public void Age() => _gain /= _fading;

    /// <summary>Asks again what the steps from one on have answered.</summary>
    public void TakeBack(int first)
    {
        for (var at = _bounds.Count - 1; at >= first; at--)
        {
            ref readonly var step = ref _bounds.StepAt(at);
            var activity = step.Side >> 1;
            var (from, to) = (step.Side & 1) == 0 ? (step.Before, step.After) : (-step.After, -step.Before);
            var question = _first[activity] + from - _bounds.RootEarliest(activity);
            for (var time = from; time < to; time++, question++)
            {
                if (_place[question] < 0)
                    Insert(question);
            }
        }
    }

    private int Time(int question) => _bounds.RootEarliest(_activity[question]) + question - _first[_activity[question]];

    private void Rescale()
    {
        for (var question = 0; question < _praise.Length; question++)
            _praise[question] *= 1e-100;
        _gain *= 1e-100;
    }

    /// <summary>When the next is asked for, all that follows is drawn and nothing contradicts it.</summary>
    private void ComeNearer()
    {
        if (_likely is null || _bounds.Sum <= _furthest)
            return;
        _furthest = _bounds.Sum;
        for (var i = 0; i < _likely.Length; i++)
            _likely[i] = Math.Clamp(_likely[i], _bounds.Earliest(i), _bounds.Latest(i));
    }

    private void Insert(int question)
    {
        (_heap[_count], _place[question]) = (question, _count);
        Up(_count++);
    }

    private int Pop()
    {
        var top = _heap[0];
        _place[top] = -1;
        if (--_count > 0)
        {
            (_heap[0], _place[_heap[_count]]) = (_heap[_count], 0);
            Down(0);
        }

        return top;
    }

    private void Up(int place)
    {
        var question = _heap[place];
        for (var above = (place - 1) / 2; place > 0 && _praise[_heap[above]] < _praise[question]; above = (place - 1) / 2)
        {
            Put(_heap[above], place);
            place = above;
        }

        Put(question, place);
    }

    private void Down(int place)
    {
        var question = _heap[place];
        while ((2 * place) + 1 < _count)
        {
            var below = (2 * place) + 1;
            if (below + 1 < _count && _praise[_heap[below + 1]] > _praise[_heap[below]])
                below++;
            if (_praise[_heap[below]] <= _praise[question])
                break;
            Put(_heap[below], place);
            place = below;
        }

        Put(question, place);
    }

    private void Put(int question, int place) => (_heap[place], _place[question]) = (question, place);
}
