namespace Refettle.Stuck;

/// <summary>The ladder of one condition, made ready to be asked: every rung in plain figures, and what a
/// joint of a known level would take.</summary>
/// <remarks>
/// What is left to do after a row of failures hangs only on which rungs failed, and which of them dry:
/// few states, each solved once. Weights are carried along as chance times what was seen and never divided out, so that minutes are those
/// of the whole times the chance of being there. Knowing the level can only help, so the minutes of known levels bound a branch from below;
/// branches that cannot win are not followed.
/// </remarks>
internal sealed class Climb
{
    private readonly Dictionary<State, (double Minutes, int Rung)> _solved = [];
    private readonly Dictionary<(uint Failed, bool IsSoaked), LevelWeights> _known = [];
    private readonly RungFigures[] _rungs;

    /// <param name="made">The ladders that are made ready already, by condition; those that mishaps lead to are added.</param>
    private Climb(NextTryQuestion question, JointCondition condition, Dictionary<JointCondition, Climb> made)
    {
        if (!question.Ladders.TryGetValue(condition, out var ladder))
            throw new ArgumentException($"There is no ladder for a joint that is {condition}.");
        var rungs = ladder.Rungs.Where(rung => !question.Forbidden.Contains(rung.Id)).ToList();
        if (rungs.SelectMany(rung => rung.Mishaps).Any(mishap => mishap.Becomes <= condition))
            throw new ArgumentException($"Ladder {ladder.Id} has a mishap that leads back: a joint only gets worse.");
        if (!rungs.Any(rung => rung.IsSure))
            throw new ArgumentException($"Ladder {ladder.Id} has no sure rung that is allowed.");
        _rungs = [.. rungs.Select((rung, number) => new RungFigures(rung, 1u << number, question, worse => Of(question, worse, made)))];
    }

    /// <summary>The ladder of a condition, made ready once.</summary>
    /// <param name="made">What was made ready for the same ladders, prices and forbidden rungs; added to.</param>
    /// <exception cref="ArgumentException">A ladder that can be needed is missing, leads back, or has no
    /// sure rung that is admissible.</exception>
    public static Climb Of(NextTryQuestion question, JointCondition condition, Dictionary<JointCondition, Climb> made)
    {
        if (!made.TryGetValue(condition, out var climb))
            made.Add(condition, climb = new(question, condition, made));
        return climb;
    }

    public IReadOnlyList<RungFigures> Rungs => _rungs;

    /// <summary>A state in which some rungs failed already, dry.</summary>
    public State After(ValueList<string> tried, bool isSoaked) =>
        new(_rungs.Where(rung => tried.Contains(rung.Rung.Id) && !rung.Rung.IsSure).Aggregate(0u, (all, rung) => all | rung.Bit), 0,
            isSoaked);

    /// <summary>Forgets what was solved: another belief is asked about.</summary>
    public void Forget() => _solved.Clear();

    /// <summary>The least expected minutes from a state, and the rung that begins them.</summary>
    /// <param name="weights">Chance of each level times what was seen; until <see cref="Forget"/> always of the same belief.</param>
    public (double Minutes, int Rung) Least(in LevelWeights weights, State state)
    {
        if (_solved.TryGetValue(state, out var solved))
            return solved;
        Span<double> atLeast = stackalloc double[_rungs.Length];
        for (var i = 0; i < _rungs.Length; i++)
            atLeast[i] = state.HasFailed(_rungs[i]) ? double.PositiveInfinity : AtLeast(_rungs[i], weights, state);
        var best = (Minutes: double.PositiveInfinity, Rung: -1);
        for (var next = IndexOfMin(atLeast); atLeast[next] < best.Minutes; next = IndexOfMin(atLeast))
        {
            if (Minutes(_rungs[next], weights, state) is var minutes && minutes < best.Minutes)
                best = (minutes, next);
            atLeast[next] = double.PositiveInfinity;
        }

        _solved[state] = best;
        return best;
    }

    /// <summary>Expected minutes when a rung is next and the best follows.</summary>
    public double Minutes(RungFigures rung, in LevelWeights weights, State state)
    {
        var minutes = weights.Sum() * rung.Takes;
        foreach (var (odds, below) in rung.Mishaps)
        {
            if (weights.Times(odds) is var worse && worse.Sum() > 0)
            {
                below.Forget();
                minutes += below.Least(worse, new(0, 0, state.IsSoaked)).Minutes;
            }
        }

        return weights.Times(rung.Holds(state.IsSoaked)) is var held && Counts(held, weights)
            ? minutes + Least(held, state.Without(rung)).Minutes
            : minutes;
    }

    /// <summary>Minutes of the same, were the level known from here on.</summary>
    private double AtLeast(RungFigures rung, in LevelWeights weights, State state)
    {
        var minutes = weights.Sum() * rung.Takes;
        foreach (var (odds, below) in rung.Mishaps)
            minutes += weights.Times(odds).Dot(below.Known(0, state.IsSoaked));
        return weights.Times(rung.Holds(state.IsSoaked)) is var held && Counts(held, weights)
            ? minutes + held.Dot(Known(state.Without(rung).Failed, state.Without(rung).IsSoaked)) : minutes;
    }

    /// <summary>For each level the least minutes when it is known.</summary>
    private LevelWeights Known(uint failed, bool isSoaked)
    {
        if (_known.TryGetValue((failed, isSoaked), out var known))
            return known;
        known = new([double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity,
            double.PositiveInfinity]);
        foreach (var rung in _rungs)
        {
            if ((failed & rung.Bit) != 0)
                continue;
            var rest = rung.Rung.IsSure ? default : Known(failed | rung.Bit, isSoaked || rung.Rung.IsSoak);
            for (var level = 0; level < SeizureModel.Levels; level++)
            {
                var minutes = rung.Takes + (rung.Holds(isSoaked)[level] * rest[level]);
                foreach (var (odds, below) in rung.Mishaps)
                    minutes += odds[level] * below.Known(0, isSoaked)[level];
                known[level] = Math.Min(known[level], minutes);
            }
        }

        return _known[(failed, isSoaked)] = known;
    }

    /// <summary>Whether a remainder is more than what rounding leaves.</summary>
    private static bool Counts(in LevelWeights held, in LevelWeights weights) => held.Sum() > 1e-12 * weights.Sum();

    private static int IndexOfMin(ReadOnlySpan<double> values)
    {
        var least = 0;
        for (var i = 1; i < values.Length; i++)
            least = values[i] < values[least] ? i : least;
        return least;
    }
}

/// <summary>Which rungs have failed, dry or soaked, and whether the joint has soaked.</summary>
internal readonly record struct State(uint Dry, uint Soaked, bool IsSoaked)
{
    public uint Failed => Dry | Soaked;

    public bool HasFailed(RungFigures rung) => (Failed & rung.Bit) != 0;

    public State Without(RungFigures rung) => IsSoaked ? new(Dry, Soaked | rung.Bit, true) : new(Dry | rung.Bit, Soaked, rung.Rung.IsSoak);
}
