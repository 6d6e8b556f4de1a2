using NodaTime;
using Refettle.Bench.Coating;
using Refettle.Timeline.Spells;

namespace Refettle.Coating;

/// <summary>From when until when the next coat may go on, by the clock on the wall.</summary>
/// <param name="Closes">Null when there is no end, or none is entered.</param>
public sealed record RecoatSpan(LocalDateTime Opens, LocalDateTime? Closes)
{
    private const int MostDays = 400;

    /// <summary>On some of the days until then nothing is known of the air.</summary>
    public bool IsUnsure { get; init; }

    public bool Has(LocalDateTime time) => time >= Opens && !(time > Closes);

    /// <summary>After a coat: it opens as on the coldest of the days since, and closes as on the
    /// warmest of them. For days without a word of the air the sheet's own temperature stands,
    /// beside what is known of the others.</summary>
    /// <param name="read">Air that was read at the coat; null when it was not.</param>
    /// <returns>Null when the sheet's times are not entered.</returns>
    public static RecoatSpan? After(CarCalendar calendar, CoatingProduct product, LocalDateTime at, decimal? read)
    {
        if (RecoatHours.StatedCelsius(product) is not { } stated)
            return null;
        var (opens, closes) = (First(calendar, at, read, stated, (cold, warm) => RecoatHours.Of(product, cold, warm)!.Opens),
            First(calendar, at, read, stated, (cold, warm) => RecoatHours.Of(product, cold, warm)!.Closes));
        return new(opens.Time!.Value, closes.Time) { IsUnsure = opens.IsUnsure || closes.IsUnsure };
    }

    /// <summary>When a part can be handled, or is fully cured; null when the sheet's time or its temperature is not entered.</summary>
    /// <param name="kind"><see cref="FigureKind.Handle"/> or <see cref="FigureKind.FullCure"/>.</param>
    public static CuredAt? Cured(CarCalendar calendar, CoatingProduct product, FigureKind kind, LocalDateTime at, decimal? read)
    {
        if ((product.Figure(kind), (double?)product.Figure(FigureKind.At)) is not ({ } hours, { } stated))
            return null;
        var (time, isUnsure) = First(calendar, at, read, stated, (cold, _) => (double)hours * Math.Max(1, Cure.Factor(stated, cold)));
        return new(time!.Value, isUnsure);
    }

    /// <summary>The first moment that is so many hours after a coat, the hours depending on the
    /// coldest and warmest day until then.</summary>
    private static (LocalDateTime? Time, bool IsUnsure) First(
        CarCalendar calendar, LocalDateTime at, decimal? read, double stated, Func<double, double, double?> hours)
    {
        var (cold, warm, isUnsure) = (double.MaxValue, double.MinValue, false);
        for (var day = at.Date; ; day = day.PlusDays(1))
        {
            var known = day == at.Date && read is not null ? (double?)read : (double?)CoatingDays.Air(calendar, day)?.Celsius;
            (cold, warm, isUnsure) = (Math.Min(cold, known ?? stated), Math.Max(warm, known ?? stated), isUnsure || known is null);
            if (hours(cold, warm) is not { } needed)
                return (null, isUnsure);
            var time = at.PlusMinutes((long)Math.Round(needed * 60));
            if (time.Date <= day || Period.DaysBetween(at.Date, day) == MostDays)
                return (time.Date < day ? day.AtMidnight() : time, isUnsure);
        }
    }
}

/// <summary>When a coat is so far.</summary>
/// <param name="IsUnsure">On some of the days until then nothing is known of the air.</param>
public sealed record CuredAt(LocalDateTime Time, bool IsUnsure);
