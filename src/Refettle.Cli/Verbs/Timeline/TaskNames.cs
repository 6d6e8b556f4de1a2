using NodaTime;
using NodaTime.Extensions;
using Refettle.Stock.Baskets;
using Refettle.Timeline.Network;

namespace Refettle.Cli.Verbs.Timeline;

/// <summary>Says at once where no task has the name that was written. It is kept all the same: plans
/// change, and such a task may come.</summary>
internal static class TaskNames
{
    public static IEnumerable<Fault> Unknown(Desk desk, OpenCar open, IEnumerable<string> written)
    {
        var asked = written.Distinct().Where(name => open.Car.Calendar.Tasks.All(own => own.Id != name)).ToList();
        var known = asked.Count == 0 ? [] : Known(desk, open).Concat(open.Car.Calendar.Tasks.Select(own => own.Id)).ToHashSet();
        return asked.Where(name => !known.Contains(name))
            .Select(name => new Fault($"task {name}", "for the chosen jobs no task is called that now",
            $"{NearNames.Ask(name, known, "refettle timeline --all shows their names.")} It is kept for when there is one; refettle strike last takes it back.")
            { Severity = Severity.Note });
    }

    private static IEnumerable<string> Known(Desk desk, OpenCar open) => desk.Ladders() is { IsGood: true } ladders
        && SuppliedWork.Of(open.History, desk.All(open.Logbook).Select(car => car.History), [], ladders.Value, desk.Planner,
            desk.Around.Clock.GetCurrentInstant(), desk.Today, desk.Around.Interrupt) is { IsGood: true, Value.Work.Network: { } network }
        ? network.Tasks.Select(task => task.Id) : [];
}
