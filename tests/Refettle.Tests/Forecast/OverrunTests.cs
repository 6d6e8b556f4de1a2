using MathNet.Numerics.Distributions;
using Refettle.Forecast;

namespace Refettle.Tests.Forecast;

public sealed class OverrunTests
{
    private static readonly (double Planned, double Actual)[] Timed = [(30, 45), (20, 22), (60, 150), (15, 30), (45, 80)];

    /// <summary>Against Bayes' rule worked out on a grid of means and variances, with the densities as they are defined.</summary>
    [Fact]
    public void Learning_agrees_with_Bayes_on_a_grid()
    {
        var (start, after) = (OverrunBelief.Start, OverrunBelief.Start.After(Timed));
        var (all, mean, variance) = (0.0, 0.0, 0.0);
        for (var v = 0.002; v < 8; v *= 1.01)
        {
            for (var m = -2.0; m < 4; m += 0.01)
            {
                var weight = 0.01 * v * InverseGamma.PDF(start.Shape, start.Scale, v) * Normal.PDF(start.Mean,
                    Math.Sqrt(v / start.Weight), m)
                    * Timed.Aggregate(1.0, (chance, pair) => chance * Normal.PDF(m, Math.Sqrt(v), Math.Log(pair.Actual / pair.Planned)));
                (all, mean, variance) = (all + weight, mean + weight * m, variance + weight * v);
            }
        }

        Assert.Equal(mean / all, after.Mean, 3);
        Assert.Equal(variance / all, after.Scale / (after.Shape - 1), 2);
        Assert.Equal(5, after.Tasks);
        Assert.Equal(Origin.Measured, after.Origin);
    }

    [Fact]
    public void Learning_one_by_one_is_learning_at_once()
    {
        var (one, all) = (Timed.Aggregate(OverrunBelief.Start, (belief, pair) => belief.After([pair])), OverrunBelief.Start.After(Timed));
        Assert.Equal(all.Mean, one.Mean, 12);
        Assert.Equal(all.Scale, one.Scale, 12);
        Assert.Equal(all with { Mean = 0, Scale = 0 }, one with { Mean = 0, Scale = 0 });
    }

    [Fact]
    public void The_only_work_halved_takes_half_in_every_future()
    {
        var asked = new Net().Add("task", new OwnPace(100_000)).Ask(1000);
        var halved = asked with { Uncertainties = [new Eased(new OwnPace(100_000), 0.5, 0)] };
        Assert.All(Net.Finishes(asked).Zip(Net.Finishes(halved)), pair => Assert.Equal(pair.First / 2.0, pair.Second, 1.0));
    }

    [Fact]
    public void What_was_not_timed_teaches_nothing() => Assert.Same(OverrunBelief.Start, OverrunBelief.Start.After([(0, 5), (5, 0)]));

    /// <summary>The start says what its words say: middle factor 1.25, nine in ten between 0.6 and 2.4.</summary>
    [Fact]
    public void The_start_is_as_wide_as_it_says()
    {
        var start = OverrunBelief.Start;
        var middle = new StudentT(start.Mean, Math.Sqrt(start.Scale / start.Shape / start.Weight), 2 * start.Shape);
        Assert.Equal(1.25, start.MiddleFactor, 9);
        Assert.Equal(0.6, Math.Exp(middle.InverseCumulativeDistribution(0.05)), 0.06);
        Assert.Equal(2.4, Math.Exp(middle.InverseCumulativeDistribution(0.95)), 0.06);
    }

    /// <summary>The logarithm of one task's overrun is Student's t with 2 × shape degrees of freedom and variance scale
    /// b (1 + 1/k) / a (K. Murphy 2007, posterior predictive).</summary>
    [Fact]
    public void One_task_follows_the_predictive_distribution()
    {
        var belief = OverrunBelief.Start.After(Timed);
        var question = new Net().Add("task", new OwnPace(100_000)).Ask() with { Overrun = belief };
        var logs = Net.Finishes(question).Select(finish => Math.Log(finish / 100_000.0)).ToList();
        var expected = new StudentT(belief.Mean, Math.Sqrt(belief.Scale * (1 + 1 / belief.Weight) / belief.Shape), 2 * belief.Shape);
        foreach (var share in new[] { 0.05, 0.25, 0.5, 0.75, 0.95, 0.99 })
        {
            var limit = expected.InverseCumulativeDistribution(share);
            Sampled.Agrees(share, logs.Select(log => log <= limit ? 1.0 : 0));
        }
    }

    /// <summary>Two tasks of one future share the user's middle: the covariance of their logarithms is its variance, E[σ²] / k.</summary>
    [Fact]
    public void Tasks_of_one_future_overrun_together()
    {
        var belief = new OverrunBelief(Mean: 0, Weight: 2, Shape: 20, Scale: 0.19);
        var simulation = new Refettle.Forecast.Policy.Simulation(
            new Net().Add("one", new OwnPace(100_000)).Add("two", new OwnPace(100_000)).Ask() with { Overrun = belief }, new());
        var products = simulation.Durations(0)
            .Zip(simulation.Durations(1), (one, two) => Math.Log(one / 100_000.0) * Math.Log(two / 100_000.0));
        Sampled.Agrees(0.19 / 19 / 2, products);
    }

    /// <summary>Where the quantile changes its formula it does not jump.</summary>
    [Fact]
    public void The_spread_of_a_long_log_is_that_of_the_distribution()
    {
        var (exact, near) =
            (Refettle.Forecast.Sampling.Quantiles.Deviation(199.999), Refettle.Forecast.Sampling.Quantiles.Deviation(200.001));
        foreach (var share in new[] { 0.001, 0.05, 0.5, 0.95, 0.999 })
            Assert.Equal(1, near(share) / exact(share), 0.0002);
    }
}
