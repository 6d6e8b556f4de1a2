namespace Refettle.Stuck.OpenUp;

/// <summary>The order of a joint's tries in each condition with what is open, and what following it costs at each level.</summary>
internal sealed class Rows
{
    /// <summary>Stands for going on after more has been opened.</summary>
    private const string GoOn = "(open up and go on)";

    private readonly StuckJoint _joint;
    private readonly Dictionary<JointCondition, Ladder> _open;
    private readonly Dictionary<JointCondition, Climb> _climbs = [];
    private readonly Dictionary<(JointCondition, bool), ValueList<Rung>> _rows = [];
    private readonly Dictionary<(JointCondition, int, bool), double> _costs = [];

    public Rows(StuckJoint joint, Func<string, bool> isAdmissible)
    {
        _joint = joint;
        _open = joint.Ladders.ToDictionary(pair => pair.Key,
            pair => pair.Value with { Rungs = pair.Value.Rungs.Where(rung => isAdmissible(rung.Id)).ToValueList() });
        IsSure = IsSureFrom(joint.Condition, []);
        if (IsSure)
            Expected = Least(Ready(joint.Condition));
    }

    /// <summary>Whether every way the tries can go ends with the joint free.</summary>
    public bool IsSure { get; }

    /// <summary>Expected minutes to free it, by what is believed of this joint by itself.</summary>
    public double Expected { get; }

    /// <summary>The tries that are worth their minutes before more is opened.</summary>
    /// <param name="goesOn">What it costs to open up and go on from there.</param>
    public Pass PassBefore(Minutes goesOn)
    {
        Rung last = new() { Id = GoOn, Says = GoOn, Takes = goesOn, Odds = [1, 1, 1, 1, 1] };
        var ladders = _open.ToDictionary(pair => pair.Key, pair => pair.Value with { Rungs = [.. pair.Value.Rungs, last] });
        var climb = Climb.Of(Question(ladders), _joint.Condition, []);
        return Walk(TryPlanner.Row(climb, new(_joint.Belief), climb.After(_joint.Tried, _joint.IsSoaked)).TakeWhile(rung => !rung.IsSure)
            .ToValueList());
    }

    /// <summary>The order once the tries of a pass have failed.</summary>
    public ValueList<Rung> AfterFailing(Pass pass) => Row(
        _joint.Condition, Normal(_joint.Belief.Zip(pass.Held, (belief, held) => belief * held)),
        [.. _joint.Tried, .. pass.Rungs.Select(rung => rung.Id)], _joint.IsSoaked || pass.EndsSoaked);

    /// <summary>Expected minutes of following a row at a level.</summary>
    public double Cost(ValueList<Rung> row, JointCondition condition, int level, bool isSoaked)
    {
        var (minutes, reached) = (0.0, 1.0);
        isSoaked |= _joint.IsSoaked;
        foreach (var rung in row)
        {
            minutes += reached * MinutesOf(rung);
            foreach (var mishap in rung.Mishaps.Where(mishap => mishap.Odds[level] > 0))
                minutes += reached * mishap.Odds[level] * CostFrom(mishap.Becomes, level, isSoaked);
            reached *= Math.Max(0, rung.HoldsAt(level, isSoaked));
            isSoaked |= rung.IsSoak;
        }

        return minutes;
    }

    /// <summary>Expected minutes to free a joint that has got worse.</summary>
    public double CostFrom(JointCondition condition, int level, bool isSoaked)
    {
        if (_costs.TryGetValue((condition, level, isSoaked), out var known))
            return known;
        if (!_rows.TryGetValue((condition, isSoaked), out var row))
            _rows.Add((condition, isSoaked), row = Row(condition, _joint.Belief, [], isSoaked));
        return _costs[(condition, level, isSoaked)] = Cost(row, condition, level, isSoaked);
    }

    /// <summary>Minutes of one try, money turned into minutes.</summary>
    public double MinutesOf(Rung rung) => (double)rung.Takes.Value + ((double)(rung.Spends.Amount / _joint.PerHour.Amount) * 60);

    private Pass Walk(ValueList<Rung> rungs)
    {
        double[] free = new double[SeizureModel.Levels], minutes = new double[SeizureModel.Levels], held = [1, 1, 1, 1, 1];
        var worse = new List<Worsened>();
        var isSoaked = _joint.IsSoaked;
        foreach (var rung in rungs)
        {
            worse.AddRange(rung.Mishaps
                .Select(mishap => new Worsened(mishap.Becomes, isSoaked,
                    [.. held.Select((chance, level) => chance * mishap.Odds[level])])));
            for (var level = 0; level < held.Length; level++)
            {
                minutes[level] += held[level] * MinutesOf(rung);
                free[level] += held[level] * rung.OddsAt(level, isSoaked);
                held[level] *= Math.Max(0, rung.HoldsAt(level, isSoaked));
            }

            isSoaked |= rung.IsSoak;
        }

        return new(rungs, free, minutes, held, worse, isSoaked);
    }

    private double Least(Climb climb) => climb.Least(new(_joint.Belief), climb.After(_joint.Tried, _joint.IsSoaked)).Minutes;

    private ValueList<Rung> Row(JointCondition condition, IReadOnlyList<double> belief, ValueList<string> tried, bool isSoaked)
    {
        var climb = Ready(condition);
        return TryPlanner.Row(climb, new(belief), climb.After(tried, isSoaked)).ToValueList();
    }

    private Climb Ready(JointCondition condition)
    {
        var climb = Climb.Of(Question(_open), condition, _climbs);
        climb.Forget();
        return climb;
    }

    private NextTryQuestion Question(IReadOnlyDictionary<JointCondition, Ladder> ladders) =>
        new() { Ladders = ladders, Belief = [], PerHour = _joint.PerHour };

    private bool IsSureFrom(JointCondition condition, HashSet<JointCondition> seen) =>
        !seen.Add(condition) || (_open.TryGetValue(condition, out var ladder) && ladder.Rungs.Any(rung => rung.IsSure)
            && ladder.Rungs.SelectMany(rung => rung.Mishaps).All(mishap => IsSureFrom(mishap.Becomes, seen)));

    private static double[] Normal(IEnumerable<double> values)
    {
        double[] all = [.. values];
        var sum = all.Sum();
        return sum > 0 ? Array.ConvertAll(all, value => value / sum) : Array.ConvertAll(all, _ => 1.0 / all.Length);
    }
}
