using NodaTime;

namespace Refettle.Timeline.Spells;

/// <summary>Whole minutes from a project's begin, and what the clock on the wall shows then.</summary>
/// <remarks>A time that the clock skips in spring means the same stretch later; one that it shows twice in autumn means the first
/// (RFC 5545 §3.3.5).</remarks>
public sealed class WallClock
{
    private readonly Instant _begin;

    /// <param name="begin">Minute 0 is the next whole minute.</param>
    public WallClock(Instant begin, DateTimeZone zone)
    {
        var whole = Instant.FromUnixTimeSeconds(begin.ToUnixTimeSeconds() / 60 * 60);
        (_begin, Zone) = (whole < begin ? whole + Duration.FromMinutes(1) : whole, zone);
    }

    /// <summary>For a car, from now on; UTC while nobody has said where the clock hangs.</summary>
    public static WallClock Of(CarCalendar calendar, Instant now) =>
        new(now, calendar.TimeZone is { } zone && DateTimeZoneProviders.Tzdb.GetZoneOrNull(zone) is { } known ? known : DateTimeZone.Utc);

    public DateTimeZone Zone { get; }

    /// <summary>The day on which the project begins.</summary>
    public LocalDate Today => At(0).Date;

    public LocalDateTime At(int minute) => (_begin + Duration.FromMinutes(minute)).InZone(Zone).LocalDateTime;

    /// <summary>What it showed when something happened.</summary>
    public LocalDateTime At(DateTimeOffset moment) => Instant.FromDateTimeOffset(moment).InZone(Zone).LocalDateTime;

    /// <summary>Negative for what is past.</summary>
    public int Minute(LocalDateTime local) => Minute(Zone.AtLeniently(local).ToInstant());

    /// <summary>Rounded up to whole minutes.</summary>
    public int Minute(Instant instant) =>
        (int)Math.Clamp(Math.Ceiling((instant - _begin).TotalMinutes), int.MinValue / 2, int.MaxValue / 2);
}
