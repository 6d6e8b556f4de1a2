namespace Refettle.Stuck;

/// <summary>One logged try and what came of it.</summary>
/// <param name="Joint">The joint.</param>
/// <param name="Rung">The rung tried.</param>
/// <param name="IsSoaked">Whether the joint had soaked before.</param>
/// <param name="Outcome">What the joint is afterwards; <see cref="JointCondition.Sound"/> (or what it was) when it held.</param>
/// <param name="Held">It did not move.</param>
public sealed record Attempt(string Joint, Rung Rung, bool IsSoaked, JointCondition Outcome, bool Held)
{
    /// <summary>How likely the outcome is at a seizure level, 0 to 1.</summary>
    public double Likelihood(int level)
    {
        var freed = Rung.OddsAt(level, IsSoaked);
        if (Held)
            return 1 - freed - Rung.Mishaps.Sum(mishap => mishap.Odds[level]);
        return Outcome == JointCondition.Freed
            ? freed
            : Rung.Mishaps.Where(mishap => mishap.Becomes == Outcome).Sum(mishap => mishap.Odds[level]);
    }
}
