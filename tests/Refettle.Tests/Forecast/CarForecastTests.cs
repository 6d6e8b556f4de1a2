using NodaTime;
using Refettle.Forecast;
using Refettle.Forecast.OfCar;
using Refettle.Stuck;
using Refettle.Tests.Timeline.Network;
using Refettle.Timeline;
using Refettle.Timeline.Network;
using Refettle.Timeline.Scheduling;

namespace Refettle.Tests.Forecast;

public sealed class CarForecastTests
{
    // A Monday.
    private static readonly Instant Now = Instant.FromUtc(2027, 3, 1, 8, 0);

    private static readonly CarCalendar Evenings = new()
    {
        TimeZone = "Europe/Berlin",
        Handover = new(new(2027, 4, 10, 10, 0), "meeting"),
        Spells = [new()
            { Id = "evenings", First = new(2027, 3, 2), From = new(18, 0), Until = new(21, 0),
                Repeats = new(Rhythm.Weekly, 1, [IsoDayOfWeek.Tuesday, IsoDayOfWeek.Thursday]) }],
    };

    /// <summary>As sure as can be that everything takes what was planned.</summary>
    private static readonly OverrunBelief Punctual = new(0, 1e9, 1e9, 1e-6);

    private static CarForecastQuestion Question(NetworkQuestion asked, TaskNetwork network, CarCalendar calendar)
    {
        var car = asked.Car with { Calendar = calendar };
        var projection = Projection.Of(car, network, Now).Value;
        var schedule = new FirstScheduler().Solve(new(projection.Project), new(TimeSpan.FromSeconds(10))).Schedule;
        return new() { Car = car, Network = network, Projection = projection, Schedule = schedule, Ladders = asked.Ladders, Futures = 400 };
    }

    private static CarForecastQuestion Small(params WorkTask[] tasks)
    {
        var links = tasks.Zip(tasks.Skip(1), (before, after) => new TaskLink(before.Id, after.Id)).ToValueList();
        var car = new Car { Id = "car", Name = "Car" };
        return Question(new()
        { Car = car, Plan = new() { Question = Refettle.Access.Question.For(), Status = Refettle.Access.PlanStatus.Optimal } },
            new(tasks.ToValueList(), links, []), Evenings) with
        { Overrun = Punctual, Missed = 0 };
    }

    private static WorkTask Parcel() => Task("wait.delivery.part", 10 * 24 * 60, TaskKind.Wait) with { Promised = Promiser.Supplier };

    private static WorkTask Task(string id, decimal minutes, TaskKind kind = TaskKind.Work) =>
        new() { Id = id, Kind = kind, Says = id, Takes = new(minutes), Pace = kind == TaskKind.Wait ? Pace.WallClock : Pace.Pausing };

    /// <summary>What the owner calls a wait of his own makes nobody promise it.</summary>
    [Theory]
    [InlineData("wait.shop.one")]
    [InlineData("wait.delivery.one")]
    public void A_wait_is_late_by_whose_promise_it_is_and_not_by_its_name(string name)
    {
        var wait = Task(name, 24 * 60, TaskKind.Wait);
        var question = Small(wait, Task("fit", 60));
        Assert.Null(new Consignments(question).Of(wait));
        Assert.DoesNotContain(CarForecast.Of(question).Value.Assumed, line => line.StartsWith("Deliveries", StringComparison.Ordinal));
    }

    [Fact]
    public void What_takes_what_was_planned_is_finished_as_planned()
    {
        var forecast = CarForecast.Of(Small(Task("one", 120), Task("wait.cure.one", 24 * 60, TaskKind.Wait), Task("two", 90))).Value;

        // Tuesday 18:00 to 20:00; cured Wednesday 20:00; Thursday 18:00 to 19:30.
        Assert.Equal(new LocalDateTime(2027, 3, 4, 19, 30), forecast.At(forecast.Answer.NineteenInTwenty.Time!.Value));
        Assert.Equal(1, forecast.Answer.ChanceOfDate!.Value.Value);
        Assert.Contains("Thu 2027-03-04", ForecastWords.Sentence(forecast), StringComparison.Ordinal);
    }

    /// <summary>The owner's own figures count: a cure takes what is stated or more, and of ten thousand parcels that he expects in
    /// ten days and at worst in twenty, half come later than ten days and 500 later than twenty (the standard normal's 95 %
    /// quantile, 1.6449, from any table).</summary>
    [Fact]
    public void What_the_owner_calls_the_worst_is_counted()
    {
        var cure = Task("wait.cure.one", 24 * 60, TaskKind.Wait) with { AtWorst = new(5 * 24 * 60) };
        var forecast = CarForecast.Of(Small(Task("one", 120), cure, Task("two", 90))).Value;
        Assert.True(forecast.At(forecast.Answer.NineteenInTwenty.Time!.Value) > new LocalDateTime(2027, 3, 4, 19, 30));
        var parcel = Parcel() with { AtWorst = new(20 * 24 * 60) };
        var question = Small(parcel, Task("fit", 60));
        var promise = Assert.IsType<Promise>(new Consignments(question).Of(parcel));
        Assert.Equal((10 * 24 * 60, 1.0), (promise.Promised, promise.Lateness.Factor));
        Assert.Equal(20 * 24 * 60, promise.Promised * Math.Exp(1.6449 * promise.Lateness.Sigma), 1e-6);
        Assert.Contains(CarForecast.Of(question).Value.Assumed,
            line => line.StartsWith("Waits of which you said the worst", StringComparison.Ordinal));
        var least = Assert.IsType<ThreePoint>(new Consignments(Small(cure)).Of(cure));
        Assert.Equal((24.0 * 60, 24.0 * 60, 5 * 24.0 * 60), (least.Least, least.Likely, least.Most));
    }

    /// <summary>Ten days promised, half come a tenth late: the part is needed on the second evening after what comes before.</summary>
    [Fact]
    public void An_order_is_placed_so_early_that_it_holds_nothing_up()
    {
        var question = Small(Task("order.part", 10, TaskKind.Order), Parcel(),
            Task("fit", 60)) with
        { Confidence = 0.5, Futures = 20_000 };
        var latest = Assert.Single(CarForecast.Of(question).Value.Answer.OrderBy);

        // It is needed on Tuesday 2 March at 18:10, when the order is written: no promise can be so quick.
        Assert.Null(latest.Latest);
        Assert.Equal("wait.delivery.part", latest.Id);

        var calm = question with
        {
            Network = new(question.Network.Tasks,
                [new("order.part", "wait.delivery.part"), new("wait.delivery.part", "fit", 0), new("order.part", "fit", 14 * 24 * 60)],
                [])
        };
        var later = Assert.Single(
            CarForecast.Of(calm with { Projection = Projection.Of(calm.Car, calm.Network, Now).Value }).Value.Answer.OrderBy);

        // Needed on Tuesday 16 March at 18:10; eleven days are the median, of which 4000 futures know 110 minutes.
        var needed = question.Projection.Clock.Minute(new LocalDateTime(2027, 3, 16, 18, 10));
        Assert.Equal(needed - 11 * 24 * 60, later.Latest!.Value, 500.0);
    }

    /// <summary>1 - 1e-18 is 1 in doubles: the last of all futures is the answer, not one after it.</summary>
    [Fact]
    public void Hardly_any_confidence_takes_the_luckiest_future()
    {
        var question = Small(Task("order.part", 10, TaskKind.Order), Parcel(),
            Task("fit", 60)) with
        { Confidence = 1e-18 };
        Assert.Equal("wait.delivery.part", Assert.Single(CarForecast.Of(question).Value.Answer.OrderBy).Id);
    }

    [Fact]
    public void Missed_spells_and_a_slow_hand_move_the_finish_back()
    {
        var tasks = Enumerable.Range(0, 12).Select(i => Task($"task {i}", 90)).ToArray();
        var sure = Median(Small(tasks));
        Assert.True(Median(Small(tasks) with { Missed = 0.5 }) > sure + 7 * 24 * 60);
        Assert.True(Median(Small(tasks) with { Overrun = Punctual with { Mean = Math.Log(2) } }) > sure + 7 * 24 * 60);

        static int Median(CarForecastQuestion question) => CarForecast.Of(question).Value.Answer.Half.Time!.Value;
    }

    /// <summary>An evening more is worth more than a Sunday on which nothing is left to do, and is told in words.</summary>
    [Fact]
    public void A_free_Saturday_is_found_to_help()
    {
        var tasks = Enumerable.Range(0, 12).Select(i => Task($"task {i}", 90)).ToArray();
        var forecast = CarForecast.Of(Small(tasks)).Value;
        var extra = forecast.Answer.Helps.First(help => help.Kind == HelpKind.Extra);
        Assert.StartsWith("Saturday 2027-03-06", extra.Subject, StringComparison.Ordinal);

        // 18 hours on evenings of 3: the sixth evening; with 8 hours on Saturday the fourth, 7 days before.
        Assert.Equal(7, extra.Earlier.Value / 1440, 0.1);
    }

    /// <summary>Random cars with rusted joints, waits and deliveries: every first future passes the checker
    /// (inside), the answer is sound.</summary>
    [Fact]
    public void Any_derived_network_can_be_forecast()
    {
        var (made, tries) = (0, 0);
        for (var seed = 0; seed < 24; seed++)
        {
            if (RandomNetworks.Make(seed, seed % 2 == 0 ? Apart.ByPlan : Apart.NotYet) is not { } one)
                continue;
            var forecast = CarForecast.Of(Question(one.Question, one.Network, Evenings) with { Futures = 100 }).Value;
            made++;
            tries += one.Network.Tasks.Count(task => task.Kind == TaskKind.Try);
            Assert.True(forecast.Answer.Half.Time <= forecast.Answer.FourInFive.Time);
            Assert.NotEmpty(forecast.Assumed);
            Assert.All(forecast.Answer.Deciding, deciding => Assert.InRange(deciding.Share.Value, 0, 1));
        }

        Assert.True(made > 2 && tries > 5, $"{made} cars, {tries} tries");
    }

    /// <summary>What is left of a log-normal time of which so much has passed: its mean by the partial expectation of
    /// the log-normal distribution, as handbooks have it (Johnson, Kotz, Balakrishnan, Continuous Univariate
    /// Distributions, vol. 1, ch. 14; from memory).</summary>
    [Theory]
    [InlineData(10, 0.36, 0)]
    [InlineData(10, 0.36, 12)]
    [InlineData(28, 0.5, 40)]
    public void An_order_that_is_out_takes_what_is_left_of_its_time(double median, double sigma, double passed)
    {
        const int cells = 200_000;
        var left = Consignments.Left(median, sigma, passed);
        var mean = Enumerable.Range(0, cells).Average(i => left((i + 0.5) / cells));
        var z = passed == 0 ? double.NegativeInfinity : Math.Log(passed / median) / sigma;
        static double Phi(double x) => MathNet.Numerics.Distributions.Normal.CDF(0, 1, x);
        Assert.Equal((median * Math.Exp(sigma * sigma / 2) * Phi(sigma - z) / Phi(-z)) - passed, mean, 0.01);
    }

    /// <summary>The same plan, the same promise: the finish follows the record of whoever gave it, and the words say whose it is.</summary>
    [Fact]
    public void A_supplier_who_is_known_to_be_late_moves_the_finish()
    {
        var way = Parcel() with
        { Delivery = new("part", "On the way", "Harbour Rubber", null, 10, 10, Origin.User) };
        var asked = Small(Task("order.part", 10, TaskKind.Order), way, Task("fit", 60));
        var known = asked with
        {
            Keeping = [new("Harbour Rubber", false, new(3, 0.01), 5, "Harbour Rubber: late"),
                new("Harbour Rubber", true, new(9, 0.01), 5, "a shop")]
        };
        Assert.Equal(LocalDate.FromDateTime(new(2027, 3, 16)), Finish(asked));
        Assert.Equal(LocalDate.FromDateTime(new(2027, 4, 1)), Finish(known));
        Assert.Contains("Harbour Rubber: late.", CarForecast.Of(known).Value.Assumed);
        Assert.DoesNotContain(CarForecast.Of(known).Value.Assumed, line => line.Contains("Other deliveries", StringComparison.Ordinal));

        static LocalDate Finish(CarForecastQuestion question) =>
            CarForecast.Of(question).Value is var forecast ? forecast.At(forecast.Answer.Half.Time!.Value).Date : default;
    }
}
