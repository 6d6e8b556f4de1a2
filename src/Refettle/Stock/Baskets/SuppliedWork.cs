using NodaTime;
using Refettle.Access;
using Refettle.Forecast;
using Refettle.Forecast.OfCar;
using Refettle.Logbook;
using Refettle.Stuck;
using Refettle.Timeline;
using Refettle.Timeline.Scheduling;

namespace Refettle.Stock.Baskets;

/// <summary>What one car's timeline, forecast and evening are asked of: its tasks, waiting for what is not on
/// the shelf that all cars share.</summary>
/// <param name="Work">Its tasks are null where no plan reaches the goals; the shelf is not asked then.</param>
public sealed record SuppliedWork(CarHistory History, TimelineWork Work, Shelf Shelf, Instant Now, DateOnly Today)
{
    /// <param name="all">Of all cars, this one among them; asked for only where there is something to do.</param>
    /// <param name="further">Goals beside those of the chosen jobs.</param>
    /// <param name="today">The day at the shelf.</param>
    /// <returns>Faults when there is nothing to do, or the goals cannot be asked of this car.</returns>
    public static Result<SuppliedWork> Of(
        CarHistory history, IEnumerable<CarHistory> all, ValueList<Fact> further, LadderSet ladders, IAccessPlanner planner, Instant now,
        DateOnly today, CancellationToken cancel = default)
    {
        var work = TimelineWork.Of(history.Car, further, ladders, planner, cancel);
        if (!work.IsGood)
            return Result<SuppliedWork>.Bad(work.Faults);
        if (work.Value.Network is null)
            return Result<SuppliedWork>.Good(new(history, work.Value, Shelf.Empty, now, today));
        var histories = all.ToList();
        var shelf = ShelfFold.Of(histories);
        var others = histories.Where(one => one.Car.Id != history.Car.Id).Select(one => PlannedCar.Of(one, ladders, planner, cancel));
        var supplied = ShelfPlanner.Of(shelf, [new(history, work.Value, []), .. others], now, today, cancel: cancel).Works[0];
        return Result<SuppliedWork>.Good(new(history, supplied, shelf, now, today));
    }

    /// <summary>The forecast's question, with this car's own pace and what is known of suppliers.</summary>
    /// <param name="scheduler">Finds the order that the futures follow.</param>
    /// <returns>Faults when no plan reaches the goals, or the tasks cannot be laid onto the calendar.</returns>
    public Result<CarForecastQuestion> Forecast(IScheduler scheduler, TimeSpan most, CancellationToken cancel = default)
    {
        var tasks = Work.Tasks();
        if (!tasks.IsGood)
            return Result<CarForecastQuestion>.Bad(tasks.Faults);
        var projection = Projection.Of(Work.Car, tasks.Value, Now);
        return !projection.IsGood ? Result<CarForecastQuestion>.Bad(projection.Faults) : Result<CarForecastQuestion>.Good(new()
        {
            Car = Work.Car,
            Network = tasks.Value,
            Projection = projection.Value,
            Schedule = scheduler.Solve(new(projection.Value.Project), new(most), null, cancel).Schedule,
            Ladders = Work.Ladders,
            Overrun = TimedWork.Learn(TimedWork.Of(History)),
            Keeping = SupplierRecord.All(Shelf, Today),
        });
    }
}
