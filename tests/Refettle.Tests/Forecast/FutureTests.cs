using CsCheck;
using Refettle.Forecast;
using Refettle.Forecast.Policy;
using Refettle.Timeline;

namespace Refettle.Tests.Forecast;

public sealed class FutureTests
{
    private static readonly Gen<Window[]> Evenings = Gen.Select(Gen.Int[0, 60], Gen.Int[10, 60]).Array[4, 30].Select(pairs =>
    {
        var time = 0;
        return Array.ConvertAll(pairs, pair => new Window(time += pair.Item1 + 1, time += pair.Item2));
    });

    private static readonly Gen<Resource[]> Resources = Gen.Select(Evenings, Evenings, Gen.Int[1, 3], Gen.Bool)
        .Select((first, second, benches, two) => new[]
    {
        new Resource("person", 1, first.ToValueList()), new Resource("helper", two ? 2 : 1, second.ToValueList()),
        new Resource("bench", benches),
    });

    private static readonly Gen<Activity> Activity = Gen.Select(
        Gen.Int[0, 40], Gen.Int[0, 3], Gen.Int[0, 2], Gen.Int[0, 120], Gen.Int[0, 1],
        Gen.Int[0, 1]).Select((duration, who, pace, earliest, bench, late) =>
            new Activity("", pace == (int)Pace.Unbroken ? duration / 4 : duration, [who is 1 or 3 ? 1 : 0, who is 2 or 3 ? 1 : 0, bench],
                (Pace)pace, late * earliest));

    /// <summary>Random projects with pauses, unbroken work, waits, helpers, benches and missed evenings.</summary>
    private static readonly Gen<ForecastQuestion> Questions =
        Gen.Select(Resources, Activity.Array[2, 14], Gen.Int[0, 1000].Array[20], Gen.Int[0, 2], Gen.ULong)
            .Select((resources, activities, links, missed, seed) =>
        {
            var named = activities.Select((activity, place) => activity with { Id = $"a{place}" }).ToValueList();
            return new ForecastQuestion
            {
                Project = new(named, resources.ToValueList(), Lags(named.Count, links)),
                Uncertainties = named.Select(
                    activity => (Uncertainty)new ThreePoint(activity.Duration / 2, activity.Duration, activity.Duration * 2)).ToValueList(),
                Order = Enumerable.Range(0, named.Count).ToValueList(),
                Missed = missed == 0 ? [] : [new(0, 0.3, Origin.User), new(1, 0.5, Origin.User)],
                Futures = 100,
                Seed = seed,
            };
        });

    private static ValueList<Lag> Lags(int count, int[] links) => links
        .Select(link => (After: 1 + link % (count - 1), Link: link))
        .Select(pair => new Lag(pair.Link / 31 % pair.After, pair.After, pair.Link % 7 - 2,
            Anchor: pair.Link % 5 == 0 ? Anchor.Start : Anchor.Finish)).ToValueList();

    /// <summary>Unbroken work that is longer than any window is let run over, which the minute-by-minute play does not know.</summary>
    private static bool Fits(Course course, PlayedFuture future) => Enumerable.Range(0, course.Count).All(i =>
        course.Pace[i] != Pace.Unbroken || course.CalendarOf[i] < 0
            || future.Durations[course.Place[i]] <= course.Calendars[course.CalendarOf[i]].Longest);

    [Fact]
    public void Every_future_is_what_playing_minute_by_minute_gives() => Questions.Sample(question =>
    {
        var simulation = new Simulation(question, new());
        for (var i = 0; i < 3; i++)
        {
            var future = simulation.Play(i);
            if (!Fits(simulation.Course, future))
                continue;
            var (starts, finishes) = NaiveList.Play(question.Project, question.Order, future.Durations, future.Missed.ToHashSet());
            Assert.Equal(starts, future.Starts.Select(start => start >= OpenTimes.Never ? (int?)null : start));
            Assert.Equal(finishes, future.Finishes.Select(finish => finish >= OpenTimes.Never ? (int?)null : finish));
        }
    }, iter: 300);

    [Fact]
    public void Every_future_passes_the_checker() => Questions.Sample(question =>
    {
        var simulation = new Simulation(question, new());
        for (var i = 0; i < 5; i++)
            Assert.Empty(FutureCheck.Of(question.Project, simulation.Play(i)));
    }, iter: 300);

    [Fact]
    public void The_checker_sees_what_is_wrong()
    {
        var project = new Net().With(new("person", 1, [new(0, 60), new(100, 160)]))
            .Add(new Activity("first", 30, [1], Pace.Pausing, Earliest: 5), new Certain())
            .Add(new Activity("second", 40, [1], Pace.Pausing), new Certain(), "first")
            .Add(new Activity("third", 40, [1], Pace.Unbroken), new Certain()).Project;
        PlayedFuture good = new([30, 40, 40], [5, 35, 115], [35, 115, 155], []);
        Assert.Empty(FutureCheck.Of(project, good));
        Assert.Contains("first starts before its earliest", FutureCheck.Of(project, good with { Starts = [4, 35, 115] }));
        Assert.Contains("second starts too soon after first", FutureCheck.Of(project, good with { Starts = [5, 34, 115] }));
        Assert.Contains("second works 39 of 40", FutureCheck.Of(project, good with { Finishes = [35, 114, 155] }));
        Assert.Contains("third is broken off", FutureCheck.Of(project, good with { Finishes = [35, 115, 160] }));
        Assert.Contains("person is taken 2 times at 114",
            FutureCheck.Of(project, good with { Starts = [5, 35, 114], Finishes = [35, 115, 154] }));
        Assert.Contains("second works 15 of 40", FutureCheck.Of(project, good with { Missed = [(0, 0)] }));
    }

    /// <summary>Where resources suffice for all at once, a longer task never makes any future finish earlier.</summary>
    [Fact]
    public void A_longer_task_never_finishes_a_future_earlier_when_nothing_is_scarce() =>
        Gen.Select(Questions, Gen.Int[0, 13], Gen.Double[0, 50]).Sample((question, place, more) =>
        {
            var ample = question with
            {
                Project = question.Project with
                {
                    Activities = question.Project.Activities
                        .Select(activity => activity with { Pace = activity.Pace == Pace.Unbroken ? Pace.Pausing : activity.Pace })
                        .ToValueList(),
                    Resources = question.Project.Resources.Select(resource => resource with { Capacity = 100 }).ToValueList(),
                },
            };
            place %= question.Project.Activities.Count;
            var longer = ample with
            {
                Uncertainties = ample.Uncertainties.Select((was, other) => other == place ? new Eased(was, 1, -more) : was).ToValueList(),
            };
            foreach (var (shorter, then) in Net.Finishes(ample).Zip(Net.Finishes(longer)))
                Assert.True(shorter <= then);
        }, iter: 100);

    /// <summary>Where something is scarce it can: the longer task lets another go first, as R. L.
    /// Graham showed for machines (1969).</summary>
    [Fact]
    public void With_one_person_a_longer_task_can_finish_a_future_earlier()
    {
        Assert.Equal(30, Finish(firstWait: 5));
        Assert.Equal(20, Finish(firstWait: 10));

        static int Finish(int firstWait)
        {
            var net = new Net().With(new("person", 1))
                .Add("delivery", firstWait)
                .Add("post", 5)
                .Add(new Activity("fit", 10, [1]), new Certain(), "delivery")
                .Add(new Activity("sand", 5, [1]), new Certain(), "post")
                .Add("cure", 10, "sand");
            var question = net.Ask(100);
            return Net.Finishes(question with { Project = net.Project })[0];
        }
    }

    /// <summary>What was done holds its resources until its end; what waits for it starts then; a
    /// settled start is not begun earlier.</summary>
    [Fact]
    public void What_is_done_stays_done()
    {
        var net = new Net().With(new("bench", 1))
            .Add("part", 10)
            .Add(new Activity("begun", 99, [1], Done: new(-30, 25)), new ThreePoint(1, 2, 3), "part")
            .Add(new Activity("next", 10, [1]), new Certain())
            .Add(new Activity("settled", 10, [0], FixedStart: 50), new Certain(), "begun");
        var question = net.Ask(100);
        var future = new Simulation(question, new()).Play(0);
        Assert.Equal([0, -30, 25, 50], future.Starts);
        Assert.Equal([10, 25, 35, 60], future.Finishes);
        Assert.Empty(FutureCheck.Of(question.Project, future));
    }

    [Fact]
    public void Another_task_reshuffles_nothing()
    {
        var three = new ThreePoint(100, 400, 2000);
        var before = new Simulation(new Net().Add("one", three).Add("two", three).Ask(), new());
        var after = new Simulation(new Net().Add("new", three).Add("one", three).Add("two", three).Ask(), new());
        Assert.Equal(before.Durations(0), after.Durations(1));
        Assert.Equal(before.Durations(1), after.Durations(2));
        Assert.NotEqual(before.Durations(0), before.Durations(1));
        Assert.NotEqual(before.Durations(0), new Simulation(new Net().Add("one", three).Ask(seed: 8), new()).Durations(0));
    }

    [Fact]
    public void The_same_seed_gives_the_same_answer() => Questions.Sample(question =>
        Assert.Equivalent(Forecaster.Of(question with { Date = 500 }), Forecaster.Of(question with { Date = 500 })), iter: 10);
}
