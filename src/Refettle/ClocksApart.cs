namespace Refettle;

/// <summary>How far clocks that are set by hand may be apart, and how that is said.</summary>
public static class ClocksApart
{
    /// <summary>So much nobody minds.</summary>
    public static TimeSpan Borne { get; } = TimeSpan.FromMinutes(5);

    /// <summary><c>1 day</c>, <c>3 h</c>, <c>20 min</c>: rounded to what is worth telling.</summary>
    public static string Words(TimeSpan time) => time.TotalMinutes < 90 ? $"{Math.Round(time.TotalMinutes)} min"
        : time.TotalHours < 23.5 ? $"{Math.Round(time.TotalHours)} h"
        : Math.Round(time.TotalDays) is var days && days == 1 ? "1 day" : $"{days} days";
}
