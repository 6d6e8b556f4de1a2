using CsCheck;
using Refettle.Bench.Chance;

namespace Refettle.Tests.Bench;

public sealed class ChanceTests
{
    [Fact]
    public void A_belief_after_tries() // SciPy beta(9, 15)
    {
        var belief = new Belief(2, 2).After(7, 13);
        Ask.Printed("0.375", belief.Mean);
        Ask.Printed("0.009375", belief.Variance);
        Ask.Printed("0.221636", belief.Quantile(0.05));
        Ask.Printed("0.371473", belief.Quantile(0.5));
        Ask.Printed("0.540456", belief.Quantile(0.95));
    }

    [Fact]
    public void The_next_tries() // scipy.stats.betabinom(5, 9, 15)
    {
        var belief = new Belief(9, 15);
        Assert.All(((string[])["0.118315", "0.280220", "0.311355", "0.201465", "0.075549", "0.013095"]).Index(), row =>
            Ask.Printed(row.Item, belief.Next(row.Index, 5)));
        Ask.Printed("0.290110", belief.NextAtLeast(3, 5));
    }

    [Fact]
    public void No_failure_in_ten() // SciPy
    {
        Ask.Printed("0.045455", Belief.Jeffreys.After(0, 10).Mean);
        Ask.Printed("0.170773", Belief.Jeffreys.After(0, 10).Quantile(0.95));
        Ask.Printed("0.083333", Belief.Uniform.After(0, 10).Mean);
        Ask.Printed("0.238404", Belief.Uniform.After(0, 10).Quantile(0.95));
    }

    [Fact]
    public void Pert_is_the_beta_distribution() // SciPy beta(1.8, 4.2) on 2 to 12
    {
        var pert = new Pert(2, 4, 12);
        Assert.Equal((1.8, 4.2), (Math.Round(pert.Alpha, 12), Math.Round(pert.Beta, 12)));
        Ask.Printed("5.0", pert.Mean);
        Ask.Printed("3.0", pert.Variance);
        Ask.Printed("2.777778", pert.ClassicVariance);
        Assert.All(((double, string)[])[(0.1, "2.899021"), (0.5, "4.766723"), (0.8, "6.502586"), (0.9, "7.453341"), (0.95, "8.212767")],
            row =>
            Ask.Printed(row.Item2, pert.Quantile(row.Item1)));
    }

    [Fact]
    public void A_long_tail() // SciPy lognorm
    {
        var skewed = Skewed.FromNineInTen(4, 10);
        Ask.Printed("0.714985457", skewed.Sigma);
        Ask.Printed("5.164955", skewed.Mean);
        Ask.Printed("4.219164", skewed.StandardDeviation);
        Ask.Printed("7.301219", skewed.Quantile(0.8));
        Ask.Printed("12.966133", skewed.Quantile(0.95));
        Ask.Printed("0.166159", skewed.Beyond(8));
    }

    [Fact]
    public void Newsvendor_under_poisson_demand() // SciPy
    {
        Assert.Equal(0.8, Newsvendor.Ratio(12, 3));
        Assert.Equal(6, Newsvendor.ForPoisson(4, 0.8));
        Ask.Printed("8.931519", Newsvendor.PoissonCost(4, 6, 12, 3));
        Ask.Printed("9.154563", Newsvendor.PoissonCost(4, 5, 12, 3));
        Ask.Printed("10.271409", Newsvendor.PoissonCost(4, 7, 12, 3));
    }

    [Fact]
    public void Newsvendor_otherwise() // SciPy: norm.ppf(0.8, 20, 5); binom(12, 0.35)
    {
        Ask.Printed("24.208106", Newsvendor.ForNormal(20, 5, 0.8));
        Assert.Equal(6, Newsvendor.ForBinomial(12, 0.35, 0.8));
        Assert.Equal(6, Ask.Value("spares pieces=12 chance=35% short=12 over=3"));
    }

    [Fact]
    public void The_newsvendors_quantity_costs_least() =>
        Gen.Select(Gen.Double[0.1, 30], Gen.Double[0.5, 50], Gen.Double[0.5, 50]).Sample((mean, shortage, over) =>
        {
            var best = Newsvendor.ForPoisson(mean, Newsvendor.Ratio(shortage, over));
            var cost = Newsvendor.PoissonCost(mean, best, shortage, over);
            return cost <= Newsvendor.PoissonCost(mean, best + 1, shortage, over) + 1e-9
                && (best == 0 || cost <= Newsvendor.PoissonCost(mean, best - 1, shortage, over) + 1e-9);
        });

    // Costs by brute force over all orders (Python).
    public static TheoryData<Trial[], int[], string> Examples => new()
    {
        { [new(0.10, 0.10), new(0.60, 0.30), new(0.50, 0.40), new(1.0, 2.0)], [1, 2, 0, 3], "0.840000" },
        { [new(0.30, 0.10), new(0.35, 0.20), new(0.60, 0.50), new(0.80, 1.20), new(1.0, 3.0)], [0, 1, 2, 3, 4], "0.795100" },
    };

    [Theory]
    [MemberData(nameof(Examples))]
    public void Ratio_rule(Trial[] trials, int[] order, string cost)
    {
        Assert.Equal(order, RatioRule.Order(trials));
        Ask.Printed(cost, RatioRule.ExpectedCost(order.Select(place => trials[place])));
    }

    [Fact]
    public void Other_orders_cost_what_was_computed() // Python: cheapest first 0.874, most likely first 2.0; worst of the second set 3.0
    {
        Trial a = new(0.10, 0.10), b = new(0.60, 0.30), c = new(0.50, 0.40), d = new(1.0, 2.0);
        Ask.Printed("0.874000", RatioRule.ExpectedCost([a, b, c, d]));
        Ask.Printed("2.000000", RatioRule.ExpectedCost([d, b, c, a]));
        Ask.Printed("3.0", RatioRule.ExpectedCost([new(1.0, 3.0), new(0.30, 0.10)]));
    }

    [Fact]
    public void One_cause_among_three() // wiring, relay, control unit: six orders enumerated in Python
    {
        Trial[] trials = [new(0.5, 2.0), new(0.3, 0.5), new(0.2, 1.0)];
        Assert.Equal([1, 0, 2], RatioRule.Order(trials));
        var costs = Orders(3).Select(order => Math.Round(RatioRule.ExpectedSearchCost(order.Select(place => trials[place])), 9)).Order();
        Assert.Equal([2.1, 2.2, 2.4, 2.45, 2.65, 2.75], costs);
    }

    [Fact]
    public void No_order_is_cheaper_than_the_ratio_rule() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[0.01, 5]).Select((chance, cost) => new Trial(chance, cost)).Array[1, 6].Sample(trials =>
        {
            var best = RatioRule.ExpectedCost(RatioRule.Order(trials).Select(place => trials[place]));
            return Orders(trials.Length).All(order => RatioRule.ExpectedCost(order.Select(place => trials[place])) >= best - 1e-9);
        }, iter: 200);

    private static IEnumerable<int[]> Orders(int count) => count == 0
        ? [[]]
        : Orders(count - 1)
            .SelectMany(order => Enumerable.Range(0, count).Select(place => (int[])[.. order[..place], count - 1, .. order[place..]]));
}
