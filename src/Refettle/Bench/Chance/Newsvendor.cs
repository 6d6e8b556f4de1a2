using MathNet.Numerics.Distributions;

namespace Refettle.Bench.Chance;

/// <summary>How many to have in hand when too few and too many both cost: the newsvendor's quantity.</summary>
public static class Newsvendor
{
    /// <summary>cu / (cu + co): the probability that the quantity should suffice. Costs of one unit, more than 0.</summary>
    public static double Ratio(double costOfOneShort, double costOfOneOver) => costOfOneShort / (costOfOneShort + costOfOneOver);

    /// <summary>The least quantity that suffices with this probability (above 0, below 1), for a demand
    /// with that cumulative distribution.</summary>
    public static int Quantity(Func<int, double> cumulative, double ratio)
    {
        var quantity = 0;
        while (cumulative(quantity) < ratio && quantity < 100_000)
            quantity++;
        return quantity;
    }

    /// <summary>Quantity for a demand that comes at random, this many on average (Poisson).</summary>
    public static int ForPoisson(double mean, double ratio) => Quantity(count => Poisson.CDF(mean, count), ratio);

    /// <summary>Quantity for so many pieces that each need a new one with a probability (binomial).</summary>
    public static int ForBinomial(int pieces, double probability, double ratio) =>
        Quantity(count => Binomial.CDF(probability, pieces, count), ratio);

    /// <summary>Quantity for a normal demand.</summary>
    public static double ForNormal(double mean, double standardDeviation, double ratio) => Normal.InvCDF(mean, standardDeviation, ratio);

    /// <summary>Expected cost of a quantity under Poisson demand.</summary>
    public static double PoissonCost(double mean, int quantity, double costOfOneShort, double costOfOneOver)
    {
        var over = Enumerable.Range(0, quantity + 1).Sum(demand => (quantity - demand) * Poisson.PMF(mean, demand));
        return costOfOneOver * over + costOfOneShort * (over + mean - quantity);
    }
}
