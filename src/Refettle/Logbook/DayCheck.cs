using NodaTime;

namespace Refettle.Logbook;

/// <summary>Whether a day can be meant: what is reckoned from a mistyped year runs out of the calendar. Days of what is about stock are
/// looked at in <see cref="StockCheck"/>.</summary>
internal static class DayCheck
{
    /// <summary>Rubber is as old as the car it was made for.</summary>
    private const int FirstYear = 1885;

    private const int LastYear = 2200;

    /// <summary>Before an entry is written, and again when it is folded: a log may come from elsewhere.</summary>
    public static IEnumerable<Fault> Of(Happening happening) => happening switch
    {
        SpellAdded { Spell: var spell } => Of($"spell {spell.Id}", [spell.First, spell.Repeats?.Until, .. spell.Except]),
        SpellMissed missed => Of($"spell {missed.Spell}", missed.Day),
        HandoverSet set => Of("handover", set.Handover?.By.Date),
        FacilityAdded { Facility: var facility } => Of($"facility {facility.Id}", facility.From, facility.Until),
        ClimateRead read => Of("climate", read.Reading.Day),
        TaskFixed set => Of($"task {set.Task}", set.Start?.Date),
        TaskForbidden forbidden => Of($"task {forbidden.Task}", forbidden.Days.First, forbidden.Days.Last),
        TaskMarked { Mark: var mark } => Of($"task {mark.Task}", mark.At.Date),
        TimelineKept kept => Of("timeline", kept.Tasks.SelectMany(task => new LocalDate?[] { task.Start.Date, task.Finish.Date })),
        MeansSet set => Of("means", set.Means.By),
        MoneySpent spent => Of("money", spent.Receipt.On),
        CoatApplied applied => Of("coat", applied.Coat.At.Date),
        SoakBegun begun => Of($"joint {begun.Joint}", DateOnly.FromDateTime(begun.Since.DateTime)),
        _ => [],
    };

    public static IEnumerable<Fault> Of(string place, params IEnumerable<LocalDate?> days) =>
        days.OfType<LocalDate>().Where(day => day.Year is < FirstYear or > LastYear)
        .Select(day => new Fault(place, $"the day {day:uuuu-MM-dd}", $"Give a day from {FirstYear} to {LastYear}."));

    public static IEnumerable<Fault> Of(string place, params IEnumerable<DateOnly?> days) =>
        Of(place, days.OfType<DateOnly>().Select(day => (LocalDate?)LocalDate.FromDateOnly(day)));
}
