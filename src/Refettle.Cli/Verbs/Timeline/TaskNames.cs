using NodaTime;
using NodaTime.Extensions;
using Refettle.Stock.Baskets;
using Refettle.Timeline.Network;

namespace Refettle.Cli.Verbs.Timeline;

/// <summary>Says at once where no task has the name that was written, and where a mark alone does not do it. Both are kept all the
/// same: plans change, and such a task may come.</summary>
internal static class TaskNames
{
    /// <param name="marked">The task that is marked as begun or done; null when none is.</param>
    public static ValueList<Fault> Notes(Desk desk, OpenCar open, IEnumerable<string> written, string? marked)
    {
        var asked = written.Distinct().Where(name => open.Car.Calendar.Tasks.All(own => own.Id != name)).ToList();
        if (asked.Count == 0)
            return [];
        var network = Network(desk, open);
        var known = network.Tasks.Select(task => task.Id).Concat(open.Car.Calendar.Tasks.Select(own => own.Id)).ToHashSet();
        return [.. asked.Where(name => !known.Contains(name)).Select(name => Unknown(name, known)), .. NotInTheBooks(network, marked)];
    }

    private static Fault Unknown(string name, HashSet<string> known) => new($"task {name}", "for the chosen jobs no task is called that now",
        $"{NearNames.Ask(name, known, "refettle timeline --all shows their names.")} It is kept for when there is one; refettle strike last takes it back.")
    { Severity = Severity.Note };

    private static IEnumerable<Fault> NotInTheBooks(TaskNetwork network, string? marked) =>
        network.Tasks.Where(task => task.Id == marked && Deliveries.IsPlaced(network, task)).Select(task => new Fault($"task {task.Id}",
            "the mark alone brings no order into the books, and the basket goes on asking for it",
            "Book it: refettle orders place SUPPLIER NUMBER=COUNT; refettle basket shows what and how many. refettle strike last takes the mark back.")
        { Severity = Severity.Note });

    private static TaskNetwork Network(Desk desk, OpenCar open) => desk.Ladders() is { IsGood: true } ladders
        && SuppliedWork.Of(open.History, desk.All(open.Logbook).Select(car => car.History), [], ladders.Value, desk.Planner,
            desk.Around.Clock.GetCurrentInstant(), desk.Today, desk.Around.Interrupt) is { IsGood: true, Value.Work.Network: { } network }
        ? network : new([], [], []);
}
