using NodaTime;

namespace Refettle.Cli.Verbs.Timeline;

/// <summary>How often a spell comes again, as it is typed; what is not typed stays.</summary>
internal static class SpellRepeats
{
    /// <param name="was">How it came again so far; null for once, and for a new spell.</param>
    /// <param name="last">The last day, as it is to be.</param>
    public static Result<Repetition?> Of(Repetition? was, string[] on, int? every, LocalDate? last, int? times)
    {
        if (on is ["once"])
            return last == was?.Until && times is null && every is null
                ? Result<Repetition?>.Good(null)
                : Result<Repetition?>.Bad(new Fault("--on", "once, and it is to repeat", "Leave out --last, --times and --every."));
        if (on.Length == 0 && was is null)
            return last is null && times is null && every is null or 1
                ? Result<Repetition?>.Good(null)
                : Result<Repetition?>.Bad(new Fault("--on", "it is to repeat, and no day is given", "Say --on tue,thu or --on daily."));
        var days = on.Length == 0 ? Result<(Rhythm, ValueList<IsoDayOfWeek>)>.Good((was!.Rhythm, was.Days)) : Rhythms(on);
        return days.IsGood
            ? Result<Repetition?>.Good(new(days.Value.Item1, every ?? was?.Interval ?? 1, days.Value.Item2, last, times ?? was?.Count))
            : Result<Repetition?>.Bad(days.Faults);
    }

    private static Result<(Rhythm, ValueList<IsoDayOfWeek>)> Rhythms(string[] on)
    {
        if (on is ["daily"])
            return Result<(Rhythm, ValueList<IsoDayOfWeek>)>.Good((Rhythm.Daily, []));
        var week = Days.Week(on);
        return week.IsGood
            ? Result<(Rhythm, ValueList<IsoDayOfWeek>)>.Good((Rhythm.Weekly, week.Value))
            : Result<(Rhythm, ValueList<IsoDayOfWeek>)>.Bad(week.Faults);
    }
}
