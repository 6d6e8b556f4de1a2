using NodaTime;

namespace Refettle.Logbook;

/// <summary>Whether a day can be meant: what is reckoned from a mistyped year runs out of the calendar.</summary>
internal static class DayCheck
{
    /// <summary>Rubber is as old as the car it was made for.</summary>
    private const int FirstYear = 1885;

    private const int LastYear = 2200;

    public static IEnumerable<Fault> Of(string place, params IEnumerable<LocalDate?> days) => days.OfType<LocalDate>().Where(day => day.Year is < FirstYear or > LastYear)
        .Select(day => new Fault(place, $"the day {day:uuuu-MM-dd}", $"Give a day from {FirstYear} to {LastYear}."));

    public static IEnumerable<Fault> Of(string place, params IEnumerable<DateOnly?> days) => Of(place, days.OfType<DateOnly>().Select(day => (LocalDate?)LocalDate.FromDateOnly(day)));
}
