using NodaTime;

namespace Refettle;

/// <summary>Days and times as they are shown.</summary>
public static class DayWords
{
    /// <summary><c>Sat 2027-01-09 10:00</c></summary>
    public static string Moment(LocalDateTime time) => $"{Day(time.Date)} {Clock(time.TimeOfDay)}";

    /// <summary><c>Sat 2027-01-09 10:00</c></summary>
    public static string Moment(DateTime time) => Moment(LocalDateTime.FromDateTime(time));

    /// <summary><c>Sat 2027-01-09</c></summary>
    public static string Day(DateOnly day) => Day(LocalDate.FromDateOnly(day));

    /// <summary><c>Sat 2027-01-09</c></summary>
    public static string Day(LocalDate day) => $"{Short(day.DayOfWeek)} {day:uuuu-MM-dd}";

    /// <summary><c>18:30</c></summary>
    public static string Clock(LocalTime time) => $"{time:HH:mm}";

    /// <summary><c>Sat</c></summary>
    public static string Short(IsoDayOfWeek day) => day.ToString()[..3];
}
