using NodaTime;
using Refettle.Access;
using Refettle.Logbook;
using Refettle.Stuck;
using Refettle.Timeline;
using Refettle.Timeline.Network;

namespace Refettle.Stock.Baskets;

/// <summary>A car with what is to be done to it.</summary>
/// <param name="Work">Its tasks are null where there is no timeline: then all its needs are for the day it has to be ready.</param>
/// <param name="Renew">Further parts that are to be renewed, by identifier.</param>
public sealed record PlannedCar(CarHistory History, TimelineWork Work, ValueList<string> Renew)
{
    /// <summary>With what its chosen jobs ask for; without tasks where there is nothing to do, or no way to do it.</summary>
    public static PlannedCar Of(CarHistory history, LadderSet ladders, IAccessPlanner planner, CancellationToken cancel = default) =>
        TimelineWork.Of(history.Car, [], ladders, planner, cancel) is { IsGood: true } work
            ? new(history, work.Value, [])
            : Of(history, null);

    /// <summary>With a plan and no tasks.</summary>
    public static PlannedCar Of(CarHistory history, Plan? plan) => new(history, new(history.Car, plan ?? Plan.Nothing, null), []);
}

/// <summary>The tasks of all cars, waiting for what is not in hand, and the basket by the days of their steps.</summary>
/// <param name="Works">In the order of the cars.</param>
public sealed record SuppliedCars(ValueList<TimelineWork> Works, Basket Basket);

/// <summary>Asks the one shelf for all cars: when each step is done says when its parts are needed, and when they are
/// here says when it can be done.</summary>
public static class ShelfPlanner
{
    /// <summary>Who gets a piece may change with the days, and the days with that: after so many rounds it is left as it is.</summary>
    private const int MostRounds = 3;

    /// <param name="by">The day everything must be in hand, whatever the steps say; null to let them say.</param>
    public static SuppliedCars Of(
        Shelf shelf, ValueList<PlannedCar> cars, Instant now, DateOnly today, double confidence = Basket.UsualConfidence,
        DateOnly? by = null, CancellationToken cancel = default)
    {
        var all = cars.Select(car => car.History.Car).ToValueList();
        var basket = Filled(_ => null);
        var works = Supplied();
        var scheduled = works.Select(_ => (Network: (TaskNetwork?)null, Days: (IReadOnlyDictionary<string, DateOnly>?)null)).ToList();
        for (var round = 0; round < MostRounds && by is null && works.Any(work => work.Network is not null); round++)
        {
            scheduled = works.Zip(scheduled,
                (work, known) => work.Network is not { } network
                    ? (null, null)
                    : known.Network == network
                    ? known
                    : (network, StepDays.Of(work.Car, network, now, cancel))).ToList();
            basket = Filled(place => scheduled[place].Days);
            var before = works;
            works = Supplied();
            if (works.Zip(before).All(pair => pair.First.Network == pair.Second.Network))
                break;
        }

        return new(works.Select(work => work.Filled(now, cancel)).ToValueList(), basket);

        ValueList<TimelineWork> Supplied() =>
            cars.Select(car => car.Work.With(ShelfParts.Of(shelf, basket, car.History.Car, all, today))).ToValueList();

        Basket Filled(Func<int, IReadOnlyDictionary<string, DateOnly>?> days) => Fill(shelf, cars, days, today, confidence, by);
    }

    /// <summary>The basket by days that are known.</summary>
    /// <param name="days">Of the steps of a car, by its place among the cars; null where there are none.</param>
    public static Basket Fill(
        Shelf shelf, ValueList<PlannedCar> cars, Func<int, IReadOnlyDictionary<string, DateOnly>?> days, DateOnly today,
        double confidence = Basket.UsualConfidence, DateOnly? by = null) =>
        BasketPlanner.Of(shelf, cars.SelectMany((car, place) => Needs(shelf, car, by ?? car.History.Car.Due(), days(place))), today,
            confidence);

    private static IEnumerable<Need> Needs(Shelf shelf, PlannedCar car, DateOnly? by, IReadOnlyDictionary<string, DateOnly>? days)
    {
        var (one, network) = (car.History.Car, car.Work.Network);
        var tried = network is null ? null : Tried(one, network);
        return PlanNeeds.Of(car.History, shelf, car.Work.Plan, car.Renew, by, days, tried)
            .Concat(CoatNeeds.Of(one, shelf, network, by, days));
    }

    /// <summary>Places that the tries still ahead may destroy.</summary>
    private static HashSet<string> Tried(Car car, TaskNetwork network)
    {
        var standing = new CarStanding(car);
        return network.Tasks.Where(task => task is { Kind: TaskKind.Try, Joint: not null, Mark: not { Progress: TaskProgress.Done } })
            .SelectMany(task => task.Rungs.SelectMany(rung => rung.Destroys)
                .SelectMany(word => TryPlaces.Of(standing.Joints[task.Joint!], word, standing.Parts))).ToHashSet();
    }
}
