using NodaTime;

namespace Refettle.Logbook;

/// <summary>What an entry about spells, facilities, climate and tasks tells, in a line.</summary>
public static class CalendarWords
{
    /// <summary>Null for other entries.</summary>
    public static string? Of(Happening? happening) => happening switch
    {
        SpellAdded added => $"spell {added.Spell.Id}: {Of(added.Spell)}",
        SpellRemoved removed => $"spell {removed.Spell} taken out",
        SpellMissed missed => $"spell {missed.Spell} does not take place on {DayWords.Day(missed.Day)}",
        TimeZoneChosen chosen => $"the clock on the wall: {chosen.Zone}",
        HandoverSet { Handover: { } date } => $"date to meet: {DayWords.Moment(date.By)}, {date.What}",
        HandoverSet => "no date to meet any more",
        FacilityAdded added => $"there is {Of(added.Facility)}",
        FacilityRemoved removed => $"{removed.Facility} is there no more",
        ClimateExpected expected => $"air to expect in {(expected.Months.Count == 1 ? "1 month" : $"{expected.Months.Count} months")}",
        ClimateRead read => $"air on {DayWords.Day(read.Reading.Day)}: {read.Reading.Celsius:0.#} °C, {read.Reading.HumidityPercent:0.#} %",
        _ => OfTask(happening),
    };

    /// <summary>The same as a sentence of its own; null for other entries.</summary>
    public static string? Sentence(Happening? happening) =>
        Of(happening) is { } told ? $"{char.ToUpperInvariant(told[0])}{told[1..]}" : null;

    /// <summary>When a spell takes place: <c>Tue, Thu 18:30–21:30 from 2027-01-05 until 2027-02-16</c>.</summary>
    public static string Of(Spell spell)
    {
        var hours = $"{DayWords.Clock(spell.From)}–{DayWords.Clock(spell.Until)}{(spell.Until <= spell.From ? " of the next day" : "")}";
        if (spell.Repeats is not { } again)
            return $"{DayWords.Day(spell.First)} {hours}";
        var days = again.Rhythm == Rhythm.Daily
            ? "daily"
            : string.Join(", ", (again.Days.Count == 0 ? [spell.First.DayOfWeek] : again.Days).Select(DayWords.Short));
        var every = again.Interval == 1
            ? ""
            : again.Rhythm == Rhythm.Daily
            ? $" every {again.Interval} days"
            : $" every {again.Interval} weeks";
        var end = (again.Until is { } until ? $" until {DayWords.Day(until)}" : "") + (again.Count is { } count ? $", {count} times" : "");
        var except = spell.Except.Count == 0 ? "" : $", not on {string.Join(", ", spell.Except.Select(DayWords.Day))}";
        return $"{days}{every} {hours} from {DayWords.Day(spell.First)}{end}{except}";
    }

    /// <summary>What a facility is and when it is there.</summary>
    public static string Of(Facility facility)
    {
        var days = (facility.From, facility.Until) switch
        {
            (null, null) => "",
            ({ } from, null) => $", from {DayWords.Day(from)}",
            (null, { } until) => $", until {DayWords.Day(until)}",
            ({ } from, { } until) => $", {DayWords.Day(from)} to {DayWords.Day(until)}",
        };
        return $"{facility.Name} ({Of(facility.Kind)}{(facility.Count > 1 ? $", {facility.Count} of them" : "")}{Room(facility)}{days})";
    }

    /// <summary>What a facility is good for.</summary>
    public static string Of(FacilityKind kind) => kind switch
    {
        FacilityKind.Helper => "a second pair of hands",
        FacilityKind.Lift => "a lift or stands",
        FacilityKind.Bench => "a bench",
        FacilityKind.SprayCorner => "a spray corner",
        FacilityKind.Place => "a place for the car",
        FacilityKind.Dollies => "carries a car that does not roll",
        _ => "a tool",
    };

    private static string Room(Facility facility) =>
        Facility.Fitting(facility.MostPieces, facility.MostSquareMetres) is { Length: > 0 } fits ? $", {fits} fit in at one time" : "";

    private static string? OfTask(Happening? happening) => happening switch
    {
        TaskAdded added => $"task {added.Task.Id} added: {TaskWords.Of(added.Task, other => other)}",
        TaskRemoved removed => $"task {removed.Task} taken out",
        TaskTimed { Takes: { } takes } timed => $"task {timed.Task} takes {takes}",
        TaskTimed timed => $"task {timed.Task} takes what is derived",
        TaskSplit { Parts.Count: 0 } split => $"task {split.Task} is whole again",
        TaskSplit split => $"task {split.Task} split into {string.Join(" + ", split.Parts)}",
        TaskFixed { Start: { } start } set => $"task {set.Task} starts {DayWords.Moment(start)}",
        TaskFixed set => $"task {set.Task} is free to start",
        TaskForbidden forbidden =>
            $"task {forbidden.Task} not from {DayWords.Day(forbidden.Days.First)} to {DayWords.Day(forbidden.Days.Last)}",
        TaskEquipped { Uses.Count: 0 } equipped => $"task {equipped.Task} needs what is derived",
        TaskEquipped equipped => $"task {equipped.Task} also needs {string.Join(", ", equipped.Uses)}",
        TaskMarked marked =>
            $"task {marked.Mark.Task} {(marked.Mark.Progress == TaskProgress.Ahead ? "not begun" : marked.Mark.Progress == TaskProgress.Begun ? "begun" : "done")}, {DayWords.Moment(marked.Mark.At)}",
        TimelineKept kept => $"timeline of {kept.Tasks.Count} tasks kept",
        _ => null,
    };
}
