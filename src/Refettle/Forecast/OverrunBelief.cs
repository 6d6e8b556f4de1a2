namespace Refettle.Forecast;

/// <summary>What is believed of one user's overrun: log(actual / planned) of a task is normal with a mean and a variance that nobody knows;
/// their belief is normal-inverse-gamma.</summary>
/// <param name="Mean">Of the mean of the logarithm.</param>
/// <param name="Weight">How many tasks that mean is worth; more than 0.</param>
/// <param name="Shape">Of the variance; more than 0.</param>
/// <param name="Scale">Of the variance; more than 0.</param>
/// <param name="Tasks">Timed tasks it was learned from.</param>
/// <remarks>Conjugate update after K. Murphy, Conjugate Bayesian analysis of the Gaussian distribution (2007), section 3.</remarks>
public sealed record OverrunBelief(double Mean, double Weight, double Shape, double Scale, int Tasks = 0)
{
    /// <summary>A factor is held between one tenth and ten: what overran ten times was another task.</summary>
    public const double MostFactor = 10;

    /// <summary>Before anything was timed: half of all tasks take more than 1.25 × the plan; the user's own middle lies, in nine cases of
    /// ten, between 0.6 and 2.4. Common practice, no source; wide on purpose, and outweighed after a few evenings.</summary>
    public static OverrunBelief Start { get; } = new(Math.Log(1.25), 2, 4, 1);

    public Origin Origin => Tasks == 0 ? Origin.CommonPractice : Origin.Measured;

    /// <summary>Half of this user's tasks take more than this times the plan.</summary>
    public double MiddleFactor => Math.Exp(Mean);

    /// <summary>The belief after more timed tasks. Pairs whose planned or actual time is not above 0
    /// tell nothing and are left out.</summary>
    public OverrunBelief After(IEnumerable<(double Planned, double Actual)> timed)
    {
        var logs = timed.Where(pair => pair is { Planned: > 0, Actual: > 0 }).Select(pair => Math.Log(pair.Actual / pair.Planned)).ToList();
        if (logs.Count == 0)
            return this;
        var average = logs.Average();
        var weight = Weight + logs.Count;
        var scale = Scale + 0.5 * logs.Sum(log => (log - average) * (log - average))
            + Weight * logs.Count * (average - Mean) * (average - Mean) / (2 * weight);
        return new((Weight * Mean + logs.Count * average) / weight, weight, Shape + logs.Count / 2.0, scale, Tasks + logs.Count);
    }
}
