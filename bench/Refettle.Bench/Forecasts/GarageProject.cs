using Refettle.Forecast;
using Refettle.Timeline;

namespace Refettle.Bench.Forecasts;

/// <summary>Invented projects of the kind that a car in a home garage makes: one person with
/// evenings and Saturdays, a helper now and then, a bench, a spray corner; strip, tries, work on parts with coats and cures,
/// outside shops, deliveries, refit.</summary>
internal sealed class GarageProject(int activities, int seed)
{
    private const int Day = 24 * 60;
    private const int Weeks = 40;

    private readonly Random _random = new(seed);
    private readonly List<Activity> _activities = [];
    private readonly List<Uncertainty> _uncertainties = [];
    private readonly List<Lag> _lags = [];

    /// <summary>The question: a date that is missed about as often as made is found by asking first.</summary>
    public static ForecastQuestion Ask(int activities, int seed, int futures)
    {
        var made = new GarageProject(activities, seed);
        made.Build();
        var project = new Project(made._activities.ToValueList(), Resources(), made._lags.ToValueList());
        var question = new ForecastQuestion
        {
            Project = project,
            Uncertainties = made._uncertainties.ToValueList(),
            Order = ListOrder.Of(project)!,
            Levels = Levels,
            Missed = [new(0, 0.1, Origin.CommonPractice)],
            Futures = futures,
        };
        return question with { Date = Forecaster.Finishes(question with { Futures = 1000 }).Value.Order().ElementAt(600) };
    }

    private static ValueList<HiddenLevel> Levels =>
    [
        new("grade", null, [[0.1, 0.25, 0.3, 0.25, 0.1]]),
        .. Enumerable.Range(0, 6)
            .Select(zone => new HiddenLevel($"zone {zone}", "grade", Enumerable.Range(0, 5).Select(Near).ToValueList())),
    ];

    private static ValueList<double> Near(int grade)
    {
        var weights = Enumerable.Range(0, 5).Select(level => Math.Exp(-Math.Abs(level - grade))).ToList();
        return weights.Select(weight => weight / weights.Sum()).ToValueList();
    }

    private static ValueList<Resource> Resources() =>
    [
        new("person", 1, Days(day => day % 7 is 1 or 2 or 3 ? (18, 3) : day % 7 == 5 ? (9, 8) : (0, 0))),
        new("helper", 1, Days(day => day % 7 == 5 ? (10, 4) : (0, 0))),
        new("bench", 2),
        new("spray corner", 1),
    ];

    private static ValueList<Window> Days(Func<int, (int Hour, int Hours)> hours) => Enumerable.Range(0, 7 * Weeks)
        .Select(day => (day, hours(day).Hour, hours(day).Hours)).Where(one => one.Hours > 0)
        .Select(one => new Window(one.day * Day + one.Hour * 60, one.day * Day + (one.Hour + one.Hours) * 60)).ToValueList();

    // A group is a part: strip, try, clean, coat twice with cures, or send out, or order new; refit. Some groups lean on earlier ones.
    private void Build()
    {
        var (strips, refits) = (new List<int>(), new List<int>());
        for (var group = 0; _activities.Count + 9 <= activities; group++)
        {
            var strip = Work($"strip {group}", 10, 40, [1, 0, 0, 0],
                strips.Count == 0 ? [] : [strips[_random.Next(Math.Max(0, strips.Count - 4), strips.Count)]]);
            var tried = Try(group, strip);
            var last = (group % 4) switch { 0 => Shop(group, tried), 1 => Order(group, tried), _ => Coat(group, tried) };
            refits.Add(Work($"refit {group}", 10, 50, group % 7 == 0 ? [1, 1, 0, 0] : [1, 0, 0, 0],
                [last, .. refits.Count == 0 ? [] : new[] { refits[_random.Next(refits.Count)] }]));
            strips.Add(strip);
        }

        while (_activities.Count < activities)
            Work($"check {_activities.Count}", 20, 60, [1, 0, 0, 0], [.. refits.TakeLast(3)]);
    }

    private int Try(int group, int after) =>
        Add(new Activity($"free {group}", 25, [1, 0, 0, 0], Pace.Pausing), new ByLevel($"zone {group % 6}",
    [
        [new(5, 0.9), new(30, 0.1)],
        [new(5, 0.6), new(25, 0.3), new(60, 0.1)],
        [new(10, 0.4), new(40, 0.4), new(90, 0.2)],
        [new(20, 0.3), new(60, 0.4), new(120, 0.3)],
        [new(45, 0.3), new(90, 0.4), new(240, 0.3)],
    ]), after);

    private int Shop(int group, int after)
    {
        var days = _random.Next(4, 15);
        return Add(new Activity($"shop {group}", days * Day, [0, 0, 0, 0]), new Promise(days * Day, Lateness.OfShops), after);
    }

    private int Order(int group, int after)
    {
        var days = _random.Next(2, 12);
        var order = Add(new Activity($"order {group}", days * Day, [0, 0, 0, 0]), new Promise(days * Day, Lateness.OfDeliveries));
        return Work($"fettle {group}", 10, 40, [1, 0, 1, 0], [after, order]);
    }

    private int Coat(int group, int after)
    {
        var clean = Add(new Activity($"clean {group}", 45, [1, 0, 1, 0], Pace.Pausing), Spread(45), after);
        var rust = Add(new Activity($"mend {group}", 0, [1, 0, 1, 0], Pace.Pausing), new Perhaps(0.25, Spread(90)), clean);
        var primed = Work($"prime {group}", 20, 40, [1, 0, 0, 1], [rust], Pace.Unbroken);
        var dry = Add(new Activity($"flash {group}", 16 * 60, [0, 0, 0, 0]), new ThreePoint(12 * 60, 16 * 60, 30 * 60), primed);
        var coated = Work($"coat {group}", 20, 40, [1, 0, 0, 1], [dry], Pace.Unbroken);
        _lags.Add(new(primed, coated, 0, 4 * Day));
        return Add(new Activity($"cure {group}", 2 * Day, [0, 0, 0, 0]), new ThreePoint(1.5 * Day, 2 * Day, 4 * Day), coated);
    }

    private static ThreePoint Spread(double likely) => new(likely / 2, likely, 3 * likely);

    private int Work(string id, int least, int most, ValueList<int> demands, int[] after, Pace pace = Pace.Pausing)
    {
        var planned = _random.Next(least, most);
        return Add(new Activity(id, planned, demands, pace), new OwnPace(planned), after);
    }

    private int Add(Activity activity, Uncertainty uncertainty, params int[] after)
    {
        _activities.Add(activity);
        _uncertainties.Add(uncertainty);
        _lags.AddRange(after.Distinct().Select(before => new Lag(before, _activities.Count - 1)));
        return _activities.Count - 1;
    }
}
