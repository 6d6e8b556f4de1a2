namespace Refettle.Bench.Chance;

/// <summary>One thing to try: its chance of success (0 to 1) and its cost, more than 0, success or not.</summary>
public readonly record struct Trial(double Chance, double Cost)
{
    public double Ratio => Chance / Cost;
}

/// <summary>The order in which to try: greatest chance per cost first.</summary>
/// <remarks>Least expected cost until success when chances do not depend on the order, nothing must precede anything and a failure does
/// no damage (credited to Blackwell in Chew, Ann. Math. Statist. 38, 1967); put expected damage into the cost.
/// The same order is best for tests of causes of which exactly one is there.</remarks>
public static class RatioRule
{
    /// <summary>Places of the trials in the best order, equal ratios in the order given.</summary>
    public static ValueList<int> Order(IReadOnlyList<Trial> trials) =>
        Enumerable.Range(0, trials.Count).OrderByDescending(place => trials[place].Ratio).ToValueList();

    /// <summary>Expected cost of independent trials in this order until one succeeds or all have failed.</summary>
    public static double ExpectedCost(IEnumerable<Trial> inOrder)
    {
        var (cost, reached) = (0.0, 1.0);
        foreach (var trial in inOrder)
        {
            cost += reached * trial.Cost;
            reached *= 1 - trial.Chance;
        }

        return cost;
    }

    /// <summary>Expected cost of tests in this order when exactly one of the causes is there; chances add up to 1.</summary>
    public static double ExpectedSearchCost(IEnumerable<Trial> inOrder)
    {
        var (cost, left) = (0.0, 1.0);
        foreach (var trial in inOrder)
        {
            cost += left * trial.Cost;
            left -= trial.Chance;
        }

        return cost;
    }
}
