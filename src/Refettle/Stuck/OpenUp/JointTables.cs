namespace Refettle.Stuck.OpenUp;

/// <summary>What happens at one joint, level by level, for each set of open accesses: how its tries go before anything more is opened,
/// and what it costs to finish it then.</summary>
/// <remarks>The order of the tries is the best one for what is believed of this joint by itself; what the other joints show decides about
/// opening, not about that order.</remarks>
internal sealed class JointTables
{
    private readonly StuckJoint _joint;
    private readonly Func<int, double> _openingShare;
    private readonly Dictionary<string, int> _needs;
    private readonly Dictionary<int, Rows> _rows = [];
    private readonly Dictionary<int, Pass> _passes = [];
    private readonly Dictionary<(int, int), double[]?> _finishes = [];

    /// <param name="joint">The joint.</param>
    /// <param name="openingShare">Its share of the minutes for opening a set of accesses.</param>
    public JointTables(StuckJoint joint, Func<int, double> openingShare)
    {
        (_joint, _openingShare) = (joint, openingShare);
        _needs = joint.Needs.ToDictionary(need => need.Key, need => need.Value.Aggregate(0, (mask, access) => mask | (1 << access)));
        Wants = _needs.Values.Aggregate(0, (all, mask) => all | mask);
    }

    /// <summary>The accesses that matter to the joint, as bits.</summary>
    public int Wants { get; }

    /// <summary>The tries before more is opened, when these accesses are open; empty when nothing more would help the joint.</summary>
    public Pass PassOf(int open)
    {
        open &= Wants;
        if (!_passes.TryGetValue(open, out var pass))
            _passes.Add(open, pass = MakePass(open));
        return pass;
    }

    /// <summary>For each level the expected minutes to finish times the chance that the pass did not free it; null when nothing is sure
    /// to free it with these open.</summary>
    /// <param name="first">What was open during the pass.</param>
    /// <param name="then">What is open now.</param>
    public double[]? Finish(int first, int then)
    {
        var key = (first & Wants, then & Wants);
        if (!_finishes.TryGetValue(key, out var minutes))
            _finishes.Add(key, minutes = MakeFinish(PassOf(key.Item1), RowsOf(key.Item2)));
        return minutes;
    }

    /// <summary>The order of the tries, with what is open, after some failed.</summary>
    public Rows RowsOf(int open)
    {
        if (!_rows.TryGetValue(open & Wants, out var rows))
            _rows.Add(open & Wants, rows = new(_joint, Admissible(open & Wants)));
        return rows;
    }

    private Func<string, bool> Admissible(int open) =>
        rung => !_joint.Forbidden.Contains(rung) && (_needs.GetValueOrDefault(rung) & ~open) == 0;

    private Pass MakePass(int open)
    {
        if ((Wants & ~open) == 0)
            return Pass.None;
        var goesOn = _openingShare(Wants & ~open) + RowsOf(Wants).Expected;
        return RowsOf(open).PassBefore(new(Math.Min((decimal)goesOn, Minutes.Max)));
    }

    private double[]? MakeFinish(Pass pass, Rows rows)
    {
        if (!rows.IsSure)
            return null;
        var minutes = new double[SeizureModel.Levels];
        var held = rows.AfterFailing(pass);
        for (var level = 0; level < minutes.Length; level++)
        {
            minutes[level] = pass.Held[level] * rows.Cost(held, _joint.Condition, level, pass.EndsSoaked);
            foreach (var worse in pass.Worse)
                minutes[level] += worse.Odds[level] * rows.CostFrom(worse.Becomes, level, worse.IsSoaked);
        }

        return minutes;
    }
}

/// <summary>The tries of a joint before more is opened, level by level.</summary>
/// <param name="Rungs">In their order, while each holds.</param>
/// <param name="Free">The chance that one of them frees it.</param>
/// <param name="Minutes">Expected minutes they take.</param>
/// <param name="Held">The chance that all of them hold.</param>
/// <param name="Worse">What it has become otherwise.</param>
internal sealed record Pass(ValueList<Rung> Rungs, double[] Free, double[] Minutes, double[] Held, List<Worsened> Worse, bool EndsSoaked)
{
    private static readonly double[] Nothing = new double[SeizureModel.Levels];

    /// <summary>Nothing is tried yet.</summary>
    public static Pass None { get; } = new([], Nothing, Nothing, [1, 1, 1, 1, 1], [], false);
}

/// <summary>A joint that a pass has made worse, with the chance of it at each level.</summary>
internal sealed record Worsened(JointCondition Becomes, bool IsSoaked, double[] Odds);
