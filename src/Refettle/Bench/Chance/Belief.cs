using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace Refettle.Bench.Chance;

/// <summary>What is believed of a chance of success after some tries: a beta distribution.</summary>
/// <param name="Alpha">Successes seen or assumed, more than 0.</param>
/// <param name="Beta">Failures seen or assumed, more than 0.</param>
public readonly record struct Belief(double Alpha, double Beta)
{
    /// <summary>Nothing known, every chance alike.</summary>
    public static Belief Uniform { get; } = new(1, 1);

    /// <summary>Jeffreys' prior: half a success, half a failure.</summary>
    public static Belief Jeffreys { get; } = new(0.5, 0.5);

    public double Mean => Alpha / (Alpha + Beta);

    public double Variance => Alpha * Beta / ((Alpha + Beta) * (Alpha + Beta) * (Alpha + Beta + 1));

    /// <summary>The belief after more tries; counts 0 or more.</summary>
    public Belief After(int successes, int failures) => new(Alpha + successes, Beta + failures);

    /// <summary>The chance that is not exceeded with this probability, above 0 and below 1.</summary>
    public double Quantile(double probability) => MathNet.Numerics.Distributions.Beta.InvCDF(Alpha, Beta, probability);

    /// <summary>Probability of exactly so many successes in the next tries (beta-binomial), 0 ≤ successes ≤ tries.</summary>
    public double Next(int successes, int tries) => Math.Exp(
        SpecialFunctions.BinomialLn(tries, successes) + SpecialFunctions.BetaLn(successes + Alpha, tries - successes + Beta)
            - SpecialFunctions.BetaLn(Alpha, Beta));

    /// <summary>Probability of at least so many successes in the next tries.</summary>
    public double NextAtLeast(int successes, int tries)
    {
        var belief = this;
        return Enumerable.Range(successes, Math.Max(0, tries - successes + 1)).Sum(count => belief.Next(count, tries));
    }
}
