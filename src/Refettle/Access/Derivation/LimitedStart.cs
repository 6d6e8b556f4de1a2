namespace Refettle.Access.Derivation;

/// <summary>Finds a good solution within limits fast: begins with the best without them, gives goals up until the limits are kept, fills
/// what room is left, and exchanges as long as that helps.</summary>
internal sealed class LimitedStart
{
    private const int MostRounds = 20;

    private readonly LimitedProblem _limited;
    private readonly Support _support;
    private readonly List<(int Goal, int Do, int GiveUp)> _choices = [];

    private LimitedStart(LimitedProblem limited, DerivationAnswer unlimited)
    {
        _limited = limited;
        var problem = limited.Problem;
        var alone = CheapestAlone.Of(problem).Way;
        // What the best solution makes true keeps its way; what else is called for is derived by itself, down to that.
        int[] wayOf = [.. unlimited.WayOf!.Select((way, fact) => way >= 0 ? way : alone[fact])];
        foreach (var goal in problem.Goals)
            AddChoice(goal, wayOf);
        _support = new(limited, wayOf);
    }

    /// <summary>Null when the limits cannot be kept by giving goals up.</summary>
    public static int[]? Of(LimitedProblem limited, DerivationAnswer unlimited)
    {
        var start = new LimitedStart(limited, unlimited);
        if (!start.GiveUp())
            return null;
        start.Fill();
        start.Exchange();
        return start._support.Solution();
    }

    /// <summary>A goal that can be had for a price without doing anything is a choice.</summary>
    private void AddChoice(int goal, int[] wayOf)
    {
        var (does, givesUp) = (-1, -1);
        foreach (var way in _limited.Problem.WaysOf(goal))
        {
            if (_limited.Problem.Needs[way].IsEmpty && _limited.Limits.All(limit => limit.Use[way] == 0))
                givesUp = way;
            else if (does < 0 || _limited.Problem.Cost[way] < _limited.Problem.Cost[does] || way == wayOf[goal])
                does = way;
        }

        if (does >= 0 && givesUp >= 0 && _limited.Problem.UsersOf(goal).IsEmpty)
            _choices.Add((goal, does, givesUp));
    }

    private bool GiveUp()
    {
        while (!_support.IsKept())
        {
            var (excess, cost) = (_support.Excess(), _support.Cost);
            var best = Best(choice => choice.Do, choice => choice.GiveUp, () =>
                _support.Excess() < excess ? (_support.Cost - cost) / (excess - _support.Excess()) : double.PositiveInfinity);
            if (best is not { } found)
                return false;
            _support.Switch(found.Goal, found.GiveUp);
        }

        return true;
    }

    /// <summary>Takes up what pays and fits, that first which brings most for the room it takes.</summary>
    private void Fill()
    {
        while (true)
        {
            var (cost, used) = (_support.Cost, _support.Used.ToArray());
            var best = Best(choice => choice.GiveUp, choice => choice.Do, () =>
                _support.Cost < cost && _support.IsKept() ? (_support.Cost - cost) / (1e-9 + Room(used)) : double.PositiveInfinity);
            if (best is not { } found)
                return;
            _support.Switch(found.Goal, found.Do);
        }
    }

    private void Exchange()
    {
        var isBetter = true;
        for (var round = 0; round < MostRounds && isBetter; round++)
        {
            isBetter = false;
            foreach (var choice in _choices)
                isBetter |= _support.WayOf(choice.Goal) == choice.Do && TryWithout(choice);
        }
    }

    private bool TryWithout((int Goal, int Do, int GiveUp) without)
    {
        var cost = _support.Cost;
        int[] before = [.. _choices.Select(choice => _support.WayOf(choice.Goal))];
        _support.Switch(without.Goal, without.GiveUp);
        Fill();
        if (_support.Cost < cost)
            return true;
        for (var number = 0; number < before.Length; number++)
        {
            if (_support.WayOf(_choices[number].Goal) != before[number])
                _support.Switch(_choices[number].Goal, before[number]);
        }

        return false;
    }

    /// <summary>The choice that has one way and, switched to the other, is judged least; none when all are infinite.</summary>
    private (int Goal, int Do, int GiveUp)? Best(
        Func<(int Goal, int Do, int GiveUp), int> from, Func<(int Goal, int Do, int GiveUp), int> to, Func<double> judge)
    {
        var (least, best) = (double.PositiveInfinity, ((int, int, int)?)null);
        foreach (var choice in _choices.Where(choice => _support.WayOf(choice.Goal) == from(choice)))
        {
            _support.Switch(choice.Goal, to(choice));
            var judged = judge();
            _support.Switch(choice.Goal, from(choice));
            if (judged < least)
                (least, best) = (judged, choice);
        }

        return best;
    }

    private double Room(long[] used)
    {
        var sum = 0.0;
        for (var limit = 0; limit < used.Length; limit++)
            sum += (_support.Used[limit] - used[limit]) / (_limited.Limits[limit].Most + 1.0);
        return Math.Max(0, sum);
    }
}
