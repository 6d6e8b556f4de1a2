using NodaTime;
using Refettle.Timeline.Network;
using Refettle.Timeline.Spells;

namespace Refettle.Timeline.Tonight;

/// <summary>Picks what can be finished in the time there is: everything it waits for is done, by the
/// car's log or by what was marked; no wait is still running, no gate is closed, the air lets it dry.</summary>
public sealed class TonightPlanner
{
    private const int MinutesOfADay = 24 * 60;

    private readonly TonightQuestion _question;
    private readonly WallClock _clock;
    private readonly Dictionary<string, WorkTask> _tasks;
    private readonly ILookup<string, TaskLink> _before;
    private readonly ILookup<string, TaskLink> _after;

    private TonightPlanner(TonightQuestion question)
    {
        (_question, _clock) = (question, WallClock.Of(question.Car.Calendar, question.Now));
        _tasks = question.Network.Tasks.ToDictionary(task => task.Id);
        _before = question.Network.Links.ToLookup(link => link.After);
        _after = question.Network.Links.ToLookup(link => link.Before);
    }

    public static TonightAnswer Of(TonightQuestion question) => new TonightPlanner(question).Answer();

    private TonightAnswer Answer()
    {
        var open = _question.Network.Tasks.Where(task => !task.IsWait && task.Takes > Minutes.Zero && !IsOver(task.Id)).ToList();
        var offers = open.Where(task => Against(task, []) is null)
            .Select(task => (Task: task, Rank: Rank(task), Why: Why(task).ToValueList()))
            .OrderByDescending(one => one.Rank).ThenByDescending(one => one.Task.Takes.Value)
            .ThenBy(one => one.Task.Id, StringComparer.Ordinal)
            .Select(one => new Finishable(one.Task, one.Why)).ToValueList();
        var notNow = open.Where(task => IsNext(task)).Select(task => (task, why: Against(task, []))).Where(one => one.why is not null)
            .Select(one => new NotNow(one.task, one.why!)).ToValueList();
        return new(offers, Evening(offers), notNow);
    }

    /// <summary>Why a task cannot be done and finished now; null when it can.</summary>
    /// <param name="earlier">Tasks that are done earlier tonight.</param>
    private string? Against(WorkTask task, HashSet<string> earlier) => Waiting(task, earlier) ?? Circumstances(task) ?? Mood(task)
        ?? (task.Takes > _question.Minutes ? $"it takes {task.Takes}, you have {_question.Minutes}" : null);

    private string? Waiting(WorkTask task, HashSet<string> earlier) =>
        _before[task.Id].Select(link => Waiting(link, earlier)).FirstOrDefault(why => why is not null);

    private string? Waiting(TaskLink link, HashSet<string> earlier)
    {
        var before = _tasks[link.Before];
        if (earlier.Contains(before.Id))
            return link.Least > 0 ? $"{new Minutes(link.Least)} have to pass after: {before.Says}" : null;
        if (!IsOver(before.Id))
            return before.Mark is { Progress: TaskProgress.Begun } begun && before.IsWait
                ? $"{before.Says}: until {DayWords.Moment(_clock.At(Minute(begun) + (int)Math.Ceiling(before.Takes.Value)))}"
                : $"first: {before.Says}";
        if (before.Mark is not { } mark)
            return null;
        var since = -Minute(mark);
        return since < link.Least ? $"{before.Says}: {new Minutes(link.Least - since)} more have to pass"
            : since > link.Most ? $"the time for it is over since {DayWords.Moment(_clock.At(link.Most.Value - since))} ({link.Why})"
            : null;
    }

    /// <summary>Helper, air, lift and tools by their days, and what the owner settled.</summary>
    private string? Circumstances(WorkTask task)
    {
        if (task.NotYet is { } forbidden)
            return forbidden;
        if (task is { Closed.Count: > 0, Rungs.Count: 0 })
            return $"its gate is closed: {string.Join("; ", task.Closed[0].Reasons.Select(reason => reason.Cause))}";
        if (task.Uses.Contains(Needed.Helper) && !_question.HasHelper)
            return "it needs a second pair of hands";
        if (task.Air is { } air && CoatingDays.Against(_question.Car.Calendar, _clock.Today, air) is { } damp)
            return $"the air: {damp}";
        if (task.FixedStart is { } settled && settled.Date > _clock.Today)
            return $"you settled it for {DayWords.Moment(settled)}";
        if (task.Not.Any(days => days.First <= _clock.Today && _clock.Today <= days.Last))
            return "you ruled this day out";
        return new Presence(_question.Car.Calendar, _clock).Missing(task);
    }

    private string? Mood(WorkTask task) => _question.Energy == Energy.Low && Effort.IsHard(task) ? "it is hard work"
        : _question.KeepClean && !Effort.IsClean(task) ? "it is dirty work"
        : null;

    /// <summary>A wait is over when it was marked done, or when its time has passed since it was
    /// begun; what takes no time is over with what it waits for.</summary>
    private bool IsOver(string id) => _tasks[id] is var task && task.Mark is { } mark
        ? mark.Progress == TaskProgress.Done || (task.IsWait && Minute(mark) + (int)Math.Ceiling(task.Takes.Value) <= 0)
        : task.Takes == Minutes.Zero && _before[id].All(link => IsOver(link.Before));

    /// <summary>When it was marked, in minutes from now: what was marked has happened, though another clock be ahead.</summary>
    private int Minute(TaskMark mark) => Math.Min(0, _clock.Minute(mark.At));

    private bool IsNext(WorkTask task) => _before[task.Id].All(link => IsOver(link.Before) || _tasks[link.Before].IsWait);

    /// <summary>What a delay would cost comes first: windows that close, what holds up the finish,
    /// what starts a clock; then what opens the way for more and fills the time.</summary>
    private double Rank(WorkTask task) =>
        (ClosesInMinutes(task) is { } closes && closes < 3 * MinutesOfADay ? 1000 : 0)
        + (_question.Critical.Contains(task.Id) ? 300 : 0)
        + (StartsClock(task) is not null ? 200 : 0)
        + (20 * Math.Min(5, Opens(task)))
        + (100 * (double)(task.Takes.Value / _question.Minutes.Value));

    private IEnumerable<string> Why(WorkTask task)
    {
        if (ClosesInMinutes(task) is { } closes)
            yield return Pressing(task, closes);
        if (_question.Critical.Contains(task.Id))
            yield return "it holds up the finish";
        if (StartsClock(task) is { } wait)
            yield return $"it starts a wait of {Span(wait.Takes)}: {wait.Says}";
        if (Opens(task) is > 0 and var opens)
            yield return opens == 1 ? "one more task can begin then" : $"{opens} more tasks can begin then";
        yield return $"{task.Takes} of your {_question.Minutes}";
    }

    /// <summary>A window of paint closes, a supplier takes back no longer, or somebody set the day.</summary>
    private string Pressing(WorkTask task, int closes) => Latest(task) != closes ? $"its window closes {DayWords.Moment(_clock.At(closes))}"
        : task.Kind == TaskKind.TrialFit ? $"its supplier takes it back until {DayWords.Day(task.Latest!.Value.PlusDays(-1).Date)}"
        : $"it has to be done by {DayWords.Moment(task.Latest!.Value)}";

    private static string Span(Minutes minutes) =>
        minutes.Value >= 2 * MinutesOfADay ? $"{minutes.Value / MinutesOfADay:0.#} days" : $"{minutes}";

    private int? ClosesInMinutes(WorkTask task) => new[] { Latest(task), WindowCloses(task) }.Min();

    private int? Latest(WorkTask task) => task.Latest is { } latest ? _clock.Minute(latest) : null;

    private int? WindowCloses(WorkTask task) =>
        _before[task.Id].Where(link => link.Most is not null && _tasks[link.Before].Mark is { Progress: TaskProgress.Done })
        .Select(link => (int?)(Minute(_tasks[link.Before].Mark!) + link.Most!.Value)).Min();

    private WorkTask? StartsClock(WorkTask task) =>
        _after[task.Id].Select(link => _tasks[link.After]).Where(after => after.IsWait && IsLastBefore(task, after))
            .MaxBy(after => after.Takes.Value);

    private int Opens(WorkTask task) =>
        _after[task.Id].Select(link => _tasks[link.After]).Count(after => !after.IsWait && IsLastBefore(task, after));

    private bool IsLastBefore(WorkTask task, WorkTask after) =>
        _before[after.Id].All(link => link.Before == task.Id || IsOver(link.Before));

    /// <summary>The best offer, then what still fits after it, also what only the earlier ones make possible.</summary>
    private ValueList<string> Evening(ValueList<Finishable> offers)
    {
        var (left, evening) = (_question.Minutes.Value, new List<string>());
        var candidates = offers.Select(offer => offer.Task)
            .Concat(_question.Network.Tasks.Where(task => !task.IsWait && task.Takes > Minutes.Zero && !IsOver(task.Id)))
            .DistinctBy(task => task.Id).ToList();
        while (candidates.Find(
            task => !evening.Contains(task.Id) && task.Takes.Value <= left && Against(task, [.. evening]) is null) is { } next)
        {
            evening.Add(next.Id);
            left -= next.Takes.Value;
        }

        return evening.ToValueList();
    }
}
