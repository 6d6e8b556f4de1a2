namespace Refettle.Timeline.Scheduling.Proving;

/// <summary>Learns from what cannot be: a clause that excludes all that leads there, of whose statements one only is of the last level
/// (the first unique implication point: Zhang, Madigan, Moskewicz and Malik 2001). Of each side only the greatest value
/// asked for counts.</summary>
internal sealed class Analysis(Deduction deduction, int[] duration, Branching branching)
{
    private const int Unasked = int.MinValue;

    /// <summary>How far back it is looked whether a statement follows from the others.</summary>
    private const int Depth = 10;

    private readonly Bounds _bounds = deduction.Bounds;
    private readonly FalseLevels _levels = new(deduction.Bounds);
    private readonly int[] _asked = [.. Enumerable.Repeat(Unasked, deduction.Bounds.Sides)];
    private readonly bool[] _isListed = new bool[deduction.Bounds.Sides];
    private readonly List<int> _listed = [];
    private readonly List<Statement> _explained = [];
    private readonly List<int> _learned = [];
    private int _ofLastLevel;

    /// <summary>The statements learned, packed: the first is true as soon as the search goes back to <see cref="BackTo"/>, whose
    /// level the second is of.</summary>
    public ReadOnlySpan<int> Learned => System.Runtime.InteropServices.CollectionsMarshal.AsSpan(_learned);

    public int BackTo { get; private set; }

    /// <summary>How many levels the learned statements are of.</summary>
    public int Levels { get; private set; }

    /// <summary>Learns from what the bounds refused last.</summary>
    public void Learn()
    {
        _ofLastLevel = 0;
        var (statement, reason) = _bounds.Refused;
        Ask(statement.Not);
        AskWhy(statement, reason, _bounds.Count);
        var point = FirstPoint();
        _learned.Clear();
        _learned.Add(point.Not.Packed);
        foreach (var side in _listed)
        {
            if (_asked[side] != Unasked && side != point.Side && IsNeeded(side))
                _learned.Add(new Statement(side, _asked[side]).Not.Packed);
        }

        foreach (var side in _listed)
            (_asked[side], _isListed[side]) = (Unasked, false);
        _listed.Clear();
        Settle();
    }

    /// <summary>Replaces what is of the last level by what it follows from, the latest first, until one is left.</summary>
    private Statement FirstPoint()
    {
        for (var at = _bounds.Count - 1; ; at--)
        {
            ref readonly var step = ref _bounds.StepAt(at);
            var least = _asked[step.Side];
            if (least <= step.Before)
                continue;
            var statement = new Statement(step.Side, least);
            if (_ofLastLevel == 1)
                return statement;
            _ofLastLevel--;
            _asked[step.Side] = Unasked;
            AskWhy(statement, step.Reason, at);
        }
    }

    private void AskWhy(Statement statement, Reason reason, int before)
    {
        if (reason.Kind == ReasonKind.Clause)
            Credit(reason.What);
        Explain(statement, reason, before);
        foreach (var cause in _explained)
            Ask(cause);
        _explained.Clear();
    }

    private void Credit(int clause)
    {
        deduction.Clauses.Praise(clause);
        if (!deduction.Clauses.IsForGood(clause))
            deduction.Clauses.NoteLevels(clause, _levels.Count(deduction.Clauses[clause]));
    }

    private void Ask(Statement statement)
    {
        var (side, least) = (statement.Side, statement.Least);
        var before = _asked[side];
        if (before >= least || _bounds.LevelOf(statement) is not (> 0 and var level))
            return;
        if (level == _bounds.Level && (before == Unasked || _bounds.LevelOf(new(side, before)) < level))
            _ofLastLevel++;
        _asked[side] = least;
        branching.Praise(statement);
        if (_isListed[side])
            return;
        _isListed[side] = true;
        _listed.Add(side);
    }

    /// <summary>Whether what is asked of a side does not follow from what is asked of the others. If it does, it is asked no more: two that
    /// follow from each other must not both be left out.</summary>
    private bool IsNeeded(int side)
    {
        var least = _asked[side];
        _asked[side] = Unasked;
        if (Follows(new(side, least), 0))
            return false;
        _asked[side] = least;
        return true;
    }

    /// <summary>Whether a statement follows from others that are asked for.</summary>
    private bool Follows(Statement statement, int depth)
    {
        var at = _bounds.StepOf(statement);
        var reason = _bounds.StepAt(at).Reason;
        if (reason.Kind == ReasonKind.None)
            return false;
        var first = _explained.Count;
        Explain(statement, reason, at);
        if (depth == 0 && reason.Kind != ReasonKind.Lag)
            PraiseExplained(first);
        var follows = true;
        for (var cause = first; follows && cause < _explained.Count; cause++)
            follows = IsGiven(_explained[cause], depth);
        _explained.RemoveRange(first, _explained.Count - first);
        return follows;
    }

    /// <summary>Praises also what lies just behind the learned clause (reason side rate: Liang, Ganesh, Poupart and Czarnecki 2016), as it
    /// has been explained anyway.</summary>
    private void PraiseExplained(int first)
    {
        for (var cause = first; cause < _explained.Count; cause++)
        {
            if (_bounds.LevelOf(_explained[cause]) > 0)
                branching.Praise(_explained[cause]);
        }
    }

    private bool IsGiven(Statement statement, int depth) =>
        _asked[statement.Side] >= statement.Least
        || _bounds.LevelOf(statement) == 0
        || (depth < Depth && Follows(statement, depth + 1));

    /// <summary>Adds what a statement follows from.</summary>
    /// <param name="before">What came to hold at this step or later does not count.</param>
    private void Explain(Statement statement, Reason reason, int before)
    {
        switch (reason.Kind)
        {
            case ReasonKind.Clause:
                foreach (var packed in deduction.Clauses[reason.What])
                {
                    var other = new Statement(packed);
                    if (other.Side != statement.Side || other.Least < statement.Least)
                        _explained.Add(other.Not);
                }

                break;
            case ReasonKind.Lag:
                _explained.Add(new(reason.What, statement.Least - reason.With));
                break;
            case ReasonKind.Full:
                var activity = statement.Side >> 1;
                var isDelay = (statement.Side & 1) == 0;
                _explained.Add(isDelay ? Statement.From(activity, reason.With + 1 - duration[activity])
                    : Statement.Until(activity, reason.With));
                deduction.Profile.Explain(activity, reason.What, reason.With, before, _explained);
                break;
        }
    }

    private void Settle()
    {
        (Levels, BackTo) = (_levels.Count(Learned), 0);
        for (var s = 1; s < _learned.Count; s++)
        {
            var level = _levels.Of(new(_learned[s]));
            if (level <= BackTo)
                continue;
            BackTo = level;
            (_learned[1], _learned[s]) = (_learned[s], _learned[1]);
        }
    }
}
