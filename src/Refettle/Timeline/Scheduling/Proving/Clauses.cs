using System.Runtime.CompilerServices;

namespace Refettle.Timeline.Scheduling.Proving;

/// <summary>Learned clauses, of whose statements one at least is true. Two of each are watched: while neither of them is false, nothing
/// follows from it (Moskewicz et al. 2001).</summary>
internal sealed class Clauses
{
    // A clause in the arena: how many statements, how many levels they were of, how useful it was (the bits of a float), where the search
    // for one to watch ended last (Gent 2013), the statements; the first two are watched.
    private const int Levels = 1, Usefulness = 2, Looked = 3, Head = 4;

    private const int FirstUnwatched = 2;

    /// <summary>A clause of statements of no more levels than these is kept for good.</summary>
    private const int FewLevels = 3;

    private readonly Bounds _bounds;
    private readonly int[] _first;
    private readonly WatchList[] _watches;
    private int[] _arena = new int[1 << 16];
    private List<int> _clauses = [];
    private int _used;
    private float _gain = 1;

    public Clauses(Bounds bounds)
    {
        _bounds = bounds;
        _first = new int[bounds.Sides];
        var count = 0;
        for (var side = 0; side < bounds.Sides; side++)
        {
            _first[side] = count - bounds[side];
            count += Math.Max(0, -bounds[side ^ 1] - bounds[side]) + 2;
        }

        _watches = new WatchList[count];
    }

    public int Count => _clauses.Count;

    public ReadOnlySpan<int> this[int clause] => _arena.AsSpan(clause + Head, _arena[clause]);

    /// <param name="levels">How many levels the statements were of.</param>
    /// <returns>Where it is kept.</returns>
    public int Add(ReadOnlySpan<int> statements, int levels)
    {
        var clause = _used;
        _used += Head + statements.Length;
        if (_used > _arena.Length)
            Array.Resize(ref _arena, 2 * _used);
        (_arena[clause], _arena[clause + Levels], _arena[clause + Looked]) = (statements.Length, levels, FirstUnwatched);
        UsefulnessOf(clause) = _gain;
        statements.CopyTo(_arena.AsSpan(clause + Head));
        Register(clause);
        return clause;
    }

    /// <summary>Notes that a clause served to explain something.</summary>
    public void Praise(int clause)
    {
        ref var usefulness = ref UsefulnessOf(clause);
        usefulness += _gain;
        if (usefulness > 1e20f)
            Rescale();
    }

    /// <summary>Whether a clause is of so few levels that it is never forgotten.</summary>
    public bool IsForGood(int clause) => _arena[clause + Levels] <= FewLevels;

    /// <summary>Notes of how many levels a clause was when it served; the fewest so far count (Audemard and Simon 2009).</summary>
    public void NoteLevels(int clause, int levels) => _arena[clause + Levels] = Math.Min(_arena[clause + Levels], levels);

    /// <summary>What is praised later counts more.</summary>
    public void Age() => _gain *= 1.0003f;

    /// <summary>Draws what follows when a side steps up.</summary>
    /// <returns>False when something would have to be that cannot.</returns>
    public bool Follow(int side, int before, int after)
    {
        for (var value = before + 1; value <= after; value++)
        {
            ref var list = ref _watches[_first[side] + value];
            if (list.Count > 0 && !Follow(new Statement(side, value).Not.Packed, ref list))
                return false;
        }

        return true;
    }

    /// <summary>Adds a clause while nothing is being tried, without what is false by then.</summary>
    /// <returns>False when nothing is left of it.</returns>
    public bool AddAtRoot(ReadOnlySpan<int> statements, int levels)
    {
        Span<int> open = stackalloc int[statements.Length];
        var count = 0;
        foreach (var packed in statements)
        {
            if (_bounds.Holds(new(packed)))
                return true;
            if (!_bounds.IsFalse(new(packed)))
                open[count++] = packed;
        }

        if (count > 1)
            Add(open[..count], levels);
        return count > 1 || (count == 1 && _bounds.TrySet(new(open[0]), default));
    }

    /// <summary>Forgets the less useful half of what is of many levels, and all that holds whatever is tried. Nothing may be being
    /// tried.</summary>
    /// <returns>False when nothing is left of a clause.</returns>
    public bool Forget()
    {
        var ordered = _clauses.OrderByDescending(IsForGood).ThenByDescending(clause => UsefulnessOf(clause)).ToList();
        var kept = Math.Max(_clauses.Count / 2, _clauses.Count(IsForGood));
        var old = _arena;
        (_arena, _used, _clauses) = (new int[old.Length], 0, []);
        foreach (ref var list in _watches.AsSpan())
            list.Count = 0;
        return ordered.Take(kept).Order().ToList().TrueForAll(clause => Move(old, clause));
    }

    private bool Move(int[] old, int clause)
    {
        var place = _used;
        if (!AddAtRoot(old.AsSpan(clause + Head, old[clause]), old[clause + Levels]))
            return false;
        if (_used > place)
            _arena[place + Usefulness] = old[clause + Usefulness];
        return true;
    }

    private bool Follow(int falseNow, ref WatchList list)
    {
        var values = _bounds.Values;
        var watches = list.Watches.AsSpan(0, list.Count);
        var kept = 0;
        // Of nine in ten the other statement is true: until the first that moves away, there is nothing to write.
        while (kept < watches.Length && new Statement(watches[kept].Other).HoldsFor(values))
            kept++;
        for (var w = kept; w < watches.Length; w++)
        {
            var watch = watches[w];
            var isTrue = new Statement(watch.Other).HoldsFor(values);
            if (!isTrue && Moves(ref watch, falseNow, values))
                continue;
            watches[kept++] = watch;
            if (isTrue || _bounds.TrySet(new(watch.Other), Reason.OfClause(watch.Clause)))
                continue;
            watches[(w + 1)..].CopyTo(watches[kept..]);
            list.Count = kept + watches.Length - w - 1;
            return false;
        }

        list.Count = kept;
        return true;
    }

    /// <summary>Watches, instead of the statement that is false now, one that is not. If that one is true, noting it suffices: it stays so
    /// for as long as the other is false.</summary>
    /// <returns>False when the watch stays where it is, its other statement true or the only one left.</returns>
    private bool Moves(ref Watched watch, int falseNow, ReadOnlySpan<int> values)
    {
        var clause = watch.Clause;
        var statements = _arena.AsSpan(clause + Head, _arena[clause]);
        var other = statements[0] ^ statements[1] ^ falseNow;
        watch = new(clause, other);
        if (new Statement(other).HoldsFor(values) || Open(statements, ref _arena[clause + Looked], values) is not (>= 0 and var open))
            return false;
        var next = statements[open];
        if (new Statement(next).HoldsFor(values))
        {
            watch = new(clause, next);
            return false;
        }

        (statements[0], statements[1], statements[open]) = (other, next, falseNow);
        Watch(next, clause, other);
        return true;
    }

    /// <returns>Where, of those not watched, one is that is not false; below 0 when there is none.</returns>
    private static int Open(ReadOnlySpan<int> statements, ref int looked, ReadOnlySpan<int> values)
    {
        var open = NotFalse(statements, looked, statements.Length, values);
        if (open < 0)
            open = NotFalse(statements, FirstUnwatched, looked, values);
        if (open >= 0)
            looked = open;
        return open;
    }

    private static int NotFalse(ReadOnlySpan<int> statements, int from, int to, ReadOnlySpan<int> values)
    {
        for (var s = from; s < to; s++)
        {
            if (!new Statement(statements[s]).IsFalseFor(values))
                return s;
        }

        return -1;
    }

    private void Register(int clause)
    {
        _clauses.Add(clause);
        var statements = this[clause];
        Watch(statements[0], clause, statements[1]);
        Watch(statements[1], clause, statements[0]);
    }

    private void Watch(int packed, int clause, int other)
    {
        var opposite = new Statement(packed).Not;
        _watches[_first[opposite.Side] + opposite.Least].Add(new(clause, other));
    }

    private ref float UsefulnessOf(int clause) => ref Unsafe.As<int, float>(ref _arena[clause + Usefulness]);

    private void Rescale()
    {
        foreach (var clause in _clauses)
            UsefulnessOf(clause) *= 1e-20f;
        _gain *= 1e-20f;
    }
}
