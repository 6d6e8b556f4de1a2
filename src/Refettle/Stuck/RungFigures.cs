namespace Refettle.Stuck;

/// <summary>A rung in plain figures.</summary>
internal sealed class RungFigures
{
    private readonly LevelWeights _dry;
    private readonly LevelWeights _soaked;

    /// <param name="bit">Stands for the rung in a state.</param>
    /// <param name="below">The ladders that mishaps lead to.</param>
    public RungFigures(Rung rung, uint bit, NextTryQuestion question, Func<JointCondition, Climb> below)
    {
        (Rung, Bit) = (rung, bit);
        Takes = (double)rung.Takes.Value
            + (double)question.ClearingFirst.GetValueOrDefault(rung.Id).Value
            + ((double)rung.Waits.Value / 60 * question.WaitingHourInMinutes)
            + (double)(rung.Spends.Amount / question.PerHour.Amount * 60);
        (_dry, _soaked) = (Held(rung, isSoaked: false), Held(rung, isSoaked: true));
        Mishaps = [.. rung.Mishaps.Where(mishap => mishap.CanHappen)
            .Select(mishap => (new LevelWeights(mishap.Odds), below(mishap.Becomes)))];
    }

    public Rung Rung { get; }

    public uint Bit { get; }

    /// <summary>Minutes of one try: work, clearing the way, waiting at its price, and what it uses up.</summary>
    public double Takes { get; }

    /// <summary>The chances of each mishap, and the ladder that it leads to.</summary>
    public (LevelWeights Odds, Climb Below)[] Mishaps { get; }

    /// <summary>The chance at each level that the joint is afterwards as it was.</summary>
    public ref readonly LevelWeights Holds(bool isSoaked) => ref isSoaked ? ref _soaked : ref _dry;

    private static LevelWeights Held(Rung rung, bool isSoaked)
    {
        var held = default(LevelWeights);
        for (var level = 0; level < SeizureModel.Levels; level++)
            held[level] = Math.Max(0, rung.HoldsAt(level, isSoaked));
        return held;
    }
}
