using NodaTime;
using Refettle.Stuck;
using Refettle.Timeline;
using Refettle.Timeline.Network;
using Refettle.Timeline.Scheduling;
using Refettle.Timeline.Tonight;

namespace Refettle.Cli.Forms;

/// <summary>A timeline as <c>--json</c> gives it. Minutes are plain numbers, times are by the clock on the wall.</summary>
internal sealed record TimelineForm(
    string TimeZone, LocalDateTime Begin, ScheduleStatus Status, LocalDateTime? Finish, LocalDateTime? Bound, LocalDateTime? Date,
    bool? InTime, bool CountsOnMore, LocalDate? LastEntered,
    ValueList<TaskForm> Tasks, ValueList<PlannedWindow> Spells, ValueList<string> Clashes, ValueList<TaskChange> Changes,
    ValueList<Fault> Notes)
{
    public static TimelineForm Of(TimelineAnswer answer) => new(
        answer.TimeZone, answer.Begin, answer.Status, answer.Finish, answer.Bound, answer.Date, answer.IsInTime, answer.CountsOnMore,
        answer.LastEntered,
        answer.Tasks.Select(task => TaskForm.Of(task.Task) with
        { Start = task.Start, Finish = task.Finish, Critical = task.IsCritical, Pieces = task.Pieces }).ToValueList(),
        answer.Spells, answer.Clashes, answer.Changes, answer.Notes);
}

/// <summary>One task.</summary>
internal sealed record TaskForm(
    string Id, TaskKind Kind, string Says, Minutes Minutes, Origin Origin, bool Wait, string? Place, string? Posture, string? Stance,
    ValueList<string> Uses, double Chance,
    ValueList<Fact> Facts, ValueList<Fact> For, ValueList<string> Jobs, ValueList<string> Tries, ValueList<ClosedTry> Closed,
    ValueList<string> Cautions)
{
    public LocalDateTime? Start { get; init; }

    public LocalDateTime? Finish { get; init; }

    public bool? Critical { get; init; }

    public ValueList<PlannedWindow>? Pieces { get; init; }

    /// <summary>What it takes of parts, and how that stands.</summary>
    public ValueList<PlaceParts> Parts { get; init; } = [];

    /// <summary>The place that the car stands at for it, or is moved to; null for where it usually stands.</summary>
    public string? At { get; init; }

    /// <summary>What is handed in.</summary>
    public ValueList<Waste> Waste { get; init; } = [];

    /// <summary>Whose delivery or work a wait is for.</summary>
    public Consignment? Delivery { get; init; }

    public static TaskForm Of(WorkTask task) => new(
        task.Id, task.Kind, task.Says, task.Takes, task.Origin, task.IsWait, task.Place, task.Posture, task.Stance, task.Uses, task.Chance,
        task.Steps.Select(step => step.Fact).ToValueList(), task.For, task.Jobs, task.Rungs.Select(rung => rung.Id).ToValueList(),
        task.Closed, task.Cautions)
    { At = task.At, Waste = task.Waste, Parts = task.Parts, Delivery = task.Delivery };
}

/// <summary>What can be finished tonight.</summary>
internal sealed record TonightForm(Minutes Minutes, ValueList<OfferForm> Offers, ValueList<string> Evening, ValueList<NotNowForm> NotNow)
{
    public static TonightForm Of(Minutes minutes, TonightAnswer answer) => new(
        minutes, answer.Offers.Select(offer => new OfferForm(TaskForm.Of(offer.Task), offer.Why)).ToValueList(), answer.Evening,
        answer.NotNow.Select(one => new NotNowForm(one.Task.Id, one.Task.Says, one.Why)).ToValueList());
}

internal sealed record OfferForm(TaskForm Task, ValueList<string> Why);

internal sealed record NotNowForm(string Task, string Says, string Why);
