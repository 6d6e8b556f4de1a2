using Refettle.Timeline.Network;
using Refettle.Timeline.Scheduling;

namespace Refettle.Timeline;

/// <summary>Says why nothing is done on a car that is to be moved, or stands elsewhere, although there would be time.</summary>
internal sealed class AwayNotes(Projection projection, Schedule schedule)
{
    /// <summary>Of the owner's time: less than that is not worth a word.</summary>
    private static readonly Minutes _least = new(60);

    private readonly ILookup<int, int> _before = projection.Project.Lags.ToLookup(lag => lag.After, lag => lag.Before);

    public static IEnumerable<Fault> Of(Projection projection, Schedule schedule) => new AwayNotes(projection, schedule).All();

    private IEnumerable<Fault> All() => Moves().Where(there => projection.Tasks[there].At is not null).Select(Of).OfType<Fault>();

    private IEnumerable<int> Moves() =>
        Enumerable.Range(0, projection.Tasks.Count)
            .Where(i => projection.Tasks[i].Kind == TaskKind.Move && projection.Project.Activities[i].Done is null);

    private Fault? Of(int there)
    {
        var from = _before[there].Select(before => schedule.Finishes[before]).DefaultIfEmpty(0).Max();
        var leaves = Moves().Where(move => schedule.Starts[move] >= schedule.Finishes[there] && move != there)
            .OrderBy(move => schedule.Starts[move]).Select(move => (int?)move).FirstOrDefault();
        if (leaves is not { } away || !Waiting(away, from).Any() || Idle(from, schedule.Starts[away]) is var idle && idle < _least)
            return null;
        var until = DayWords.Moment(projection.Clock.At(schedule.Starts[away]));
        return new($"task {projection.Tasks[there].Id}",
            $"{idle.Value / 60:0} h of yours until {until} pass without work on the car: what is done where it usually stands waits until it is back", "What may be done before is named by the task: refettle task add TASK --after OTHER. Or give the place other days.")
        { Severity = Severity.Note };
    }

    /// <summary>What could be done in that time if the car stood where it usually does.</summary>
    private IEnumerable<int> Waiting(int away, int from) => Enumerable.Range(0, projection.Tasks.Count)
        .Where(i => projection.Tasks[i] is { IsAtCar: true, At: null } && _before[i].Contains(away)
            && _before[i].All(other => projection.Tasks[other].Kind == TaskKind.Move || schedule.Finishes[other] <= from));

    /// <summary>The owner's time between two moments in which he does nothing.</summary>
    private Minutes Idle(int from, int until)
    {
        if (WorkTime.Of(projection.Project, [Projection.You]) is not { } hands)
            return Minutes.Zero;
        var busy = Enumerable.Range(0, projection.Tasks.Count).Where(i => projection.Project.Activities[i].Demands[Projection.You] > 0)
            .Sum(i => Math.Max(0, hands.Worked(Math.Min(until, schedule.Finishes[i])) - hands.Worked(Math.Max(from, schedule.Starts[i]))));
        return new(Math.Max(0, hands.Worked(until) - hands.Worked(from) - busy));
    }
}
