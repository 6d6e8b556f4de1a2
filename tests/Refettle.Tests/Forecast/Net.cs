using Refettle.Forecast;
using Refettle.Forecast.Policy;
using Refettle.Forecast.Sampling;
using Refettle.Timeline;

namespace Refettle.Tests.Forecast;

/// <summary>Builds small projects and plays them.</summary>
internal sealed class Net
{
    private readonly List<Activity> _activities = [];
    private readonly List<Uncertainty> _uncertainties = [];
    private readonly List<Lag> _lags = [];
    private readonly List<Resource> _resources = [];

    public Net With(Resource resource)
    {
        _resources.Add(resource);
        return this;
    }

    public Net Add(string id, Uncertainty uncertainty, params string[] after) => Add(new Activity(id, 0, []), uncertainty, after);

    public Net Add(string id, int duration, params string[] after) => Add(new Activity(id, duration, []), new Certain(), after);

    public Net Add(Activity activity, Uncertainty uncertainty, params string[] after)
    {
        _activities.Add(activity with
        { Demands = activity.Demands.Concat(Enumerable.Repeat(0, _resources.Count - activity.Demands.Count)).ToValueList() });
        _uncertainties.Add(uncertainty);
        _lags.AddRange(after.Select(id => new Lag(Place(id), _activities.Count - 1)));
        return this;
    }

    public Net Lag(string before, string after, int least, int? most = null, Anchor anchor = Anchor.Finish)
    {
        _lags.Add(new(Place(before), Place(after), least, most, anchor));
        return this;
    }

    public Project Project => new(_activities.ToValueList(), _resources.ToValueList(), _lags.ToValueList());

    public ForecastQuestion Ask(int futures = 100_000, ulong seed = 7) => new()
    {
        Project = Project,
        Uncertainties = _uncertainties.ToValueList(),
        Order = ListOrder.Of(Project)!,
        Futures = futures,
        Seed = seed,
    };

    public static int[] Finishes(ForecastQuestion question) => new Simulation(question, new()).Run().Finishes;

    private int Place(string id) => _activities.FindIndex(activity => activity.Id == id);
}

/// <summary>Compares figures from sampling.</summary>
internal static class Sampled
{
    private const double MostErrors = 4.5;

    public static void Agrees(double expected, IEnumerable<double> values, double alsoError = 0)
    {
        var estimate = Estimate.OfMean(values.ToArray());
        var error = Math.Sqrt(estimate.StandardError * estimate.StandardError + alsoError * alsoError);
        Assert.True(Math.Abs(estimate.Value - expected) <= MostErrors * error,
            $"{estimate} against {expected}: {(estimate.Value - expected) / error:0.0} standard errors");
    }
}
