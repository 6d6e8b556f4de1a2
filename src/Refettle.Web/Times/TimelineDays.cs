using NodaTime;
using Refettle.Timeline;
using Refettle.Timeline.Network;

namespace Refettle.Web.Times;

/// <summary>A timeline by days: what is worked at when, which waits run, when there is a spell.</summary>
/// <param name="FirstHour">The hour at which the bars of all days begin.</param>
/// <param name="LastHour">The hour at which they end, up to 24.</param>
public sealed record TimelineDays(ValueList<TimelineDay> Days, int FirstHour, int LastHour)
{
    /// <summary>Days with work or a spell up to the finish; what takes no time is left out.</summary>
    public static TimelineDays Of(TimelineAnswer answer)
    {
        var work = answer.Tasks.Where(task => !task.Task.IsWait && task.Task.Takes > Minutes.Zero)
            .SelectMany(task => task.Pieces.Select((piece, i) => new TimelineLine(task, piece, i == 0)))
            .ToLookup(line => line.Piece.Start.Date);
        var spells = answer.Spells.ToLookup(window => window.Start.Date);
        var waits = answer.Tasks.Where(task => task.Task.IsWait && task.Task.Takes > Minutes.Zero).ToList();
        var days = work.Select(group => group.Key).Concat(spells.Select(group => group.Key)).Distinct().Order()
            .Where(day => answer.Finish is not { } finish || day <= finish.Date)
            .ToList();
        var before = days.Prepend(LocalDate.MinIsoValue);
        var shown = days.Zip(before,
            (day, last) => new TimelineDay(day, work[day].OrderBy(line => line.Piece.Start).ToValueList(), spells[day].ToValueList(),
            waits.Where(wait => wait.Start.Date <= day && wait.Finish.Date >= day).ToValueList())
            {
                Begin = waits.Where(wait => wait.Start.Date <= day && wait.Start.Date > last).ToValueList(),
                Over = waits.Where(wait => wait.Start.Date <= last && wait.Finish.Date <= day && wait.Finish.Date > last).ToValueList(),
            }).ToValueList();
        var hours = shown.SelectMany(day => day.Spells.Concat(day.Lines.Select(line => line.Piece))).ToList();
        return new(shown, hours.Count == 0 ? 8 : hours.Min(window => window.Start.Hour), hours.Count == 0 ? 22 : hours.Max(LastHourOf));
    }

    /// <summary>Where a time of a day lies among the bars, in minutes from their begin; times before or after lie on their ends.</summary>
    public int Across(LocalDate day, LocalDateTime time) =>
        time.Date < day ? 0 : time.Date > day ? Width : Math.Clamp((time.Hour * 60) + time.Minute - (FirstHour * 60), 0, Width);

    /// <summary>Width of the bars in minutes.</summary>
    public int Width => Math.Max(1, LastHour - FirstHour) * 60;

    private static int LastHourOf(PlannedWindow window) =>
        window.End.Date > window.Start.Date ? 24 : window.End.Hour + (window.End.Minute > 0 ? 1 : 0);
}

/// <summary>One day.</summary>
/// <param name="Waits">Those that run on this day.</param>
public sealed record TimelineDay(
    LocalDate Day, ValueList<TimelineLine> Lines, ValueList<PlannedWindow> Spells, ValueList<PlannedTask> Waits)
{
    public string Name => DayWords.Day(Day);

    /// <summary>Those that begin on it, or on a day since the one before that is shown: they are told of once.</summary>
    public ValueList<PlannedTask> Begin { get; init; } = [];

    /// <summary>Those that were told of before and end by it.</summary>
    public ValueList<PlannedTask> Over { get; init; } = [];
}

/// <summary>A piece of a task on a day.</summary>
/// <param name="IsFirst">The task begins with it.</param>
public sealed record TimelineLine(PlannedTask Task, PlannedWindow Piece, bool IsFirst)
{
    public string Hours => $"{DayWords.Clock(Piece.Start.TimeOfDay)}–{DayWords.Clock(Piece.End.TimeOfDay)}";

    public bool NeedsHelper => Task.Task.Uses.Contains(Needed.Helper);
}
