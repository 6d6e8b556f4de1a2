namespace Refettle.Bench.Chance;

/// <summary>Estimates that the bench asks for by hand; the planners use the same functions.</summary>
public static class ChanceNumbers
{
    private static readonly Input<int> Successes = Inputs.Count("successes", "tries that worked", 0, 100_000);
    private static readonly Input<int> Failures = Inputs.Count("failures", "tries that did not", 0, 100_000);
    private static readonly Input<string> Prior = Inputs.Choice("prior", "belief before any try", "uniform", "jeffreys")
        .Or("uniform", "every chance alike");
    private static readonly Input<double> Least = Inputs.Quantity("least", "shortest it can take", Units.Hour, 0, 10_000);
    private static readonly Input<double> Likely = Inputs.Quantity("likely", "likeliest", Units.Hour, 0, 10_000);
    private static readonly Input<double> Most = Inputs.Quantity("most", "longest it can take", Units.Hour, 0, 10_000);
    private static readonly Input<double> Median = Inputs.Quantity("median", "half of them take less", Units.Hour, 0.001, 10_000);
    private static readonly Input<double> NineInTen = Inputs.Quantity("nine-in-ten", "nine in ten take less", Units.Hour, 0.001, 100_000);
    private static readonly Input<int> Pieces = Inputs.Count("pieces", "pieces that may each need a new one", 1, 10_000);
    private static readonly Input<double> Breaks = Inputs.Quantity("chance", "chance that one needs replacing", Units.Percent, 0.01, 99.99);
    private static readonly Input<double> Short = Inputs.Quantity("short", "what one too few costs, any money", Units.One, 0.01, 1e6);
    private static readonly Input<double> Over = Inputs.Quantity("over", "what one too many costs, same money", Units.One, 0.01, 1e6);

    public static BenchNumber Belief { get; } = new()
    {
        Name = "success-chance",
        Says = "Chance of success from the tries so far",
        Room = "Chance",
        Formula = "Beta(a + successes, b + failures)",
        Source = "Bayes; uniform prior a = b = 1, Jeffreys a = b = ½",
        Uncertainty = "The range holds nine of ten chances that fit the tries, if the next bolt is like those tried.",
        Inputs = [Successes, Failures, Prior],
        Example = "successes=7 failures=13",
        Work = WorkBelief,
    };

    public static BenchNumber Pert { get; } = new()
    {
        Name = "three-point",
        Says = "Duration from least, likeliest and most",
        Room = "Chance",
        Formula = "beta distribution, mean (a + 4 m + b)/6, variance (mean − a)(b − mean)/7",
        Source = "PERT; the textbook's ((b − a)/6)² is not used",
        Uncertainty = "People give ranges that are too narrow; a first estimate of hidden rust more so.",
        Inputs = [Least, Likely, Most],
        Example = "least=2h likely=4h most=12h",
        Work = WorkPert,
    };

    public static BenchNumber Skewed { get; } = new()
    {
        Name = "long-tail",
        Says = "Duration that may run long, from its median and what nine in ten stay below",
        Room = "Chance",
        Formula = "lognormal, σ = ln(P90/median)/1.2816",
        Source = "Lognormal distribution",
        Uncertainty = "As good as the two figures.",
        Inputs = [Median, NineInTen],
        Example = "median=4h nine-in-ten=10h",
        Work = WorkSkewed,
    };

    public static BenchNumber Spares { get; } = new()
    {
        Name = "spares",
        Says = "How many spares to have in hand",
        Room = "Chance",
        Formula = "least Q with P(need ≤ Q) ≥ short / (short + over), need binomial",
        Source = "Newsvendor",
        Uncertainty = "Holds when pieces fail independently; on one rusty car they fail together, so lean to more.",
        Inputs = [Pieces, Breaks, Short, Over],
        Example = "pieces=12 chance=35% short=12 over=3",
        Work = WorkSpares,
    };

    private static Result<Outcome> WorkBelief(Given given)
    {
        var prior = given.Of(Prior) == "uniform" ? Chance.Belief.Uniform : Chance.Belief.Jeffreys;
        var belief = prior.After(given.Of(Successes), given.Of(Failures));
        return Outcome.Of(new BenchValue("chance of success", 100 * belief.Mean, Units.Percent, 100 * belief.Quantile(0.05),
            100 * belief.Quantile(0.95)));
    }

    private static Result<Outcome> WorkPert(Given given)
    {
        var (least, likely, most) = (given.Of(Least), given.Of(Likely), given.Of(Most));
        if (least >= most || likely < least || likely > most)
            return Outcome.Refuse("likely", "the three are not in order", "Give least ≤ likely ≤ most, and least below most");
        var pert = new Pert(least, likely, most);
        return Outcome.Of(
            new("mean", pert.Mean, Units.Hour, pert.Quantile(0.1), pert.Quantile(0.9)),
            new("half stay below", pert.Quantile(0.5), Units.Hour),
            new("four in five stay below", pert.Quantile(0.8), Units.Hour),
            new("standard deviation", Math.Sqrt(pert.Variance), Units.Hour));
    }

    private static Result<Outcome> WorkSkewed(Given given)
    {
        var (median, high) = (given.Of(Median), given.Of(NineInTen));
        if (high <= median)
            return Outcome.Refuse("nine-in-ten", "it is not above the median", "Give more than the median");
        var skewed = Chance.Skewed.FromNineInTen(median, high);
        return double.IsFinite(skewed.StandardDeviation) && skewed.Sigma < 5
            ? Outcome.Of(
                new("mean", skewed.Mean, Units.Hour),
                new("four in five stay below", skewed.Quantile(0.8), Units.Hour),
                new("nineteen in twenty stay below", skewed.Quantile(0.95), Units.Hour))
            : Outcome.Refuse("nine-in-ten", "it is so far above the median that no estimate is left",
                "Give less than 600 times the median");
    }

    private static Result<Outcome> WorkSpares(Given given)
    {
        var (pieces, chance) = (given.Of(Pieces), given.Of(Breaks) / 100);
        var ratio = Newsvendor.Ratio(given.Of(Short), given.Of(Over));
        return Outcome.Of(
            new("spares", Newsvendor.ForBinomial(pieces, chance, ratio), Units.One),
            new("needed on average", pieces * chance, Units.One),
            new("should suffice with", 100 * ratio, Units.Percent));
    }
}
