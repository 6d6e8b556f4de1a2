using NodaTime;
using Refettle.Bench.Coating;
using Refettle.Timeline.Spells;

namespace Refettle.Coating;

/// <summary>From when until when the next coat may go on, by the clock on the wall.</summary>
/// <param name="Closes">Null when there is no end, or none is entered.</param>
public sealed record RecoatSpan(LocalDateTime Opens, LocalDateTime? Closes)
{
    private const int MostDays = 400;

    public bool Has(LocalDateTime time) => time >= Opens && !(time > Closes);

    /// <summary>After a coat: it opens as on the coldest of the days since, and closes as on the warmest of them. On days without a word of the
    /// air the sheet's own temperature stands.</summary>
    /// <param name="read">Air that was read at the coat; null when it was not.</param>
    /// <returns>Null when the sheet's times are not entered.</returns>
    public static RecoatSpan? After(CarCalendar calendar, CoatingProduct product, LocalDateTime at, decimal? read) =>
        RecoatHours.AsStated(product) is null ? null
        : new(First(calendar, at, read, (cold, warm) => Hours(product, cold, warm).Opens)!.Value, First(calendar, at, read, (cold, warm) => Hours(product, cold, warm).Closes));

    /// <summary>When a part can be handled, or is fully cured; null when the sheet's time or its temperature is not entered.</summary>
    /// <param name="kind"><see cref="FigureKind.Handle"/> or <see cref="FigureKind.FullCure"/>.</param>
    public static LocalDateTime? Cured(CarCalendar calendar, CoatingProduct product, FigureKind kind, LocalDateTime at, decimal? read) =>
        product.Figure(kind) is { } hours && product.Figure(FigureKind.At) is { } stated
            ? First(calendar, at, read, (cold, _) => (double)hours * Math.Max(1, Cure.Factor((double)stated, cold ?? (double)stated)))
            : null;

    private static RecoatHours Hours(CoatingProduct product, double? cold, double? warm) =>
        cold is { } coldest && warm is { } warmest ? RecoatHours.Of(product, coldest, warmest)! : RecoatHours.AsStated(product)!;

    /// <summary>The first moment that is so many hours after a coat, the hours depending on the coldest and warmest day until then.</summary>
    private static LocalDateTime? First(CarCalendar calendar, LocalDateTime at, decimal? read, Func<double?, double?, double?> hours)
    {
        var (cold, warm) = ((double?)read, (double?)read);
        for (var day = at.Date; ; day = day.PlusDays(1))
        {
            var air = day == at.Date && read is not null ? null : (double?)CoatingDays.Air(calendar, day)?.Celsius;
            (cold, warm) = (Lower(cold, air), Higher(warm, air));
            if (hours(cold, warm) is not { } needed)
                return null;
            var time = at.PlusMinutes((long)Math.Round(needed * 60));
            if (time.Date <= day || Period.DaysBetween(at.Date, day) == MostDays)
                return time.Date < day ? day.AtMidnight() : time;
        }
    }

    private static double? Lower(double? one, double? other) => one is null ? other : other is null ? one : Math.Min(one.Value, other.Value);

    private static double? Higher(double? one, double? other) => one is null ? other : other is null ? one : Math.Max(one.Value, other.Value);
}
