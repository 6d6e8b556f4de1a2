using Refettle.Timeline;
using Refettle.Timeline.Network;

namespace Refettle.Forecast.OfCar;

/// <summary>Says of each task of a car how unsure it is, and asks when all of them are done.</summary>
internal sealed class CarFutures
{
    private readonly CarForecastQuestion _question;
    private readonly TryOutcomes _tries;
    private readonly Consignments _consignments;

    public CarFutures(CarForecastQuestion question) => (_question, _tries, _consignments) = (question, new(question), new(question));

    public ValueList<string> Assumed =>
    [
        Pace(_question.Overrun),
.. _consignments.Assumed,
        $"One spell in {1 / Math.Max(1e-3, Missed):0.#} is lost to something else ({(_question.Missed is null ? "common practice, no source" : "as you said")}).",
        "Tries at stuck joints follow the chances of their ladders, and joints of one zone are rusted alike; the minutes of tries that break something are counted, new waits for parts are not.",
        "Other waits, such as soaks, and cures of which you said no worst, are taken as planned.",
        "Every future follows the order of the timeline; a task that is not ready lets the next ones go first.",
        .. _question.Projection.LastEntered is { } last
            ? [$"Your spells are entered up to {last:uuuu-MM-dd}; after that they are taken to go on in the same rhythm."]
            : Array.Empty<string>(),
    ];

    private double Missed => _question.Missed ?? CarForecastQuestion.UsuallyMissed;

    /// <returns>A fault when the tasks wait for each other in a circle.</returns>
    public Result<ForecastQuestion> Question()
    {
        var project = _question.Projection.Project;
        var order = _question.Schedule is { } schedule ? ListOrder.Of(project, schedule) : ListOrder.Of(project);
        if (order is null)
            return Result<ForecastQuestion>.Bad(
                new Fault("tasks", "some wait for each other in a circle", "Look at the tasks you added and what you let wait for what."));
        var uncertainties = _question.Projection.Tasks.Select(Of).ToValueList();
        return Result<ForecastQuestion>.Good(new()
        {
            Project = project,
            Uncertainties = uncertainties,
            Order = order,
            Levels = _tries.Levels,
            Missed = project.Resources.Count > 0 && project.Resources[Projection.You].Open is not null
                ? [new(Projection.You, Missed, _question.Missed is null ? Origin.CommonPractice : Origin.User)]
                : [],
            Overrun = _question.Overrun,
            Extra = ExtraSpells.Of(_question.Projection),
            Date = Projection.Date(_question.Car) is { } date ? _question.Projection.Clock.Minute(date) : null,
            Confidence = _question.Confidence,
            Futures = _question.Futures,
            Seed = _question.Seed,
        });
    }

    private Uncertainty Of(WorkTask task)
    {
        var minutes = (double)Math.Ceiling(task.Takes.Value);
        return task switch
        {
            { Delivery.On: not null, Mark.Progress: TaskProgress.Begun } => _consignments.Of(task)!,
            { Mark.Progress: not TaskProgress.Ahead } => new Certain(),
            { Kind: TaskKind.Try, Joint: { } joint } when _tries.Of(task, joint) is { } outcomes => outcomes,
            { Takes.Value: 0 } => new Certain(),
            { IsWait: true } => _consignments.Of(task) ?? new Certain { Origin = task.Origin },
            _ when task.Chance < 1 => new Perhaps(task.Chance, new OwnPace(minutes)) { Origin = task.Origin },
            _ => new OwnPace(minutes) { Origin = task.Origin },
        };
    }

    private static string Pace(OverrunBelief overrun) => overrun.Tasks == 0
        ? $"Your pace: half of all tasks take {overrun.MiddleFactor:0.00} × the plan or less, held very loosely, as nothing is timed yet (common practice, no source)."
        : $"Your pace, from {overrun.Tasks} timed {(overrun.Tasks == 1 ? "task" : "tasks")}: half of them take {overrun.MiddleFactor:0.00} × the plan or less.";
}
