using Refettle.Access;

namespace Refettle.Timeline.Network;

/// <summary>Steps that only licensed people may do: booked, waited for, and done by them. They hold nobody's hands here, and are
/// never offered as work of one's own.</summary>
/// <remarks>A week until an appointment is a default of the program.</remarks>
internal sealed class LicensedWork(NetworkDraft draft)
{
    private const int DefaultDays = 7;

    private const string Way = "Ask whether they come. Else the car goes there: while it rolls and may be on a road, or on a trailer.";

    /// <summary>Whether a step's tool says that it takes a licence.</summary>
    public static bool Is(Step step) => step.Tool.Contains("licensed", StringComparison.OrdinalIgnoreCase);

    public void Add()
    {
        foreach (var task in draft.Tasks.Where(task => task.Kind is TaskKind.Strip or TaskKind.Refit && task.Steps.Any(Is)).ToList())
            Book(task);
    }

    private void Book(WorkTask task)
    {
        var book = draft.Add(new()
        {
            Id = $"book.{task.Id}",
            Kind = TaskKind.Order,
            Says = $"Book a licensed workshop: {task.Says}",
            Takes = new(10),
            Origin = Origin.Default,
            Cautions = [Way]
        });
        var wait = draft.Add(
            TryTasks.Wait(TryTasks.AtShop(task.Id), $"Until the appointment: {task.Says}", Deliveries.Days(DefaultDays), Origin.Default,
                Promiser.Shop));
        draft.Link(book, wait);
        draft.Link(wait, task.Id, why: "licensed people only");
        draft.Change(task.Id, one => one with { Pace = Pace.WallClock, Uses = [], Says = $"At the licensed workshop: {one.Says}" });
    }
}
