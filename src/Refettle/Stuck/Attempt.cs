namespace Refettle.Stuck;

/// <summary>A logged try with what its rung promised.</summary>
public sealed record Attempt(Try Try, Rung Rung)
{
    /// <summary>How likely the outcome is at a seizure level, 0 to 1.</summary>
    public double Likelihood(int level)
    {
        var freed = Rung.OddsAt(level, Try.IsSoaked);
        return Try.Becomes switch
        {
            null => 1 - freed - Rung.Mishaps.Sum(mishap => mishap.Odds[level]),
            JointCondition.Freed => freed,
            var worse when Rung.Mishaps.Any(mishap => mishap.Becomes == worse) =>
                Rung.Mishaps.Where(mishap => mishap.Becomes == worse).Sum(mishap => mishap.Odds[level]),

            // The rung does not foresee this: all that it tells is that the joint did not come free.
            _ => 1 - freed,
        };
    }
}
