using System.Globalization;
using NodaTime;
using Refettle.Timeline;

namespace Refettle.Forecast.OfCar;

/// <summary>Days off on which the owner has no time planned: asked whether one of them would help.</summary>
internal static class ExtraSpells
{
    private const int Most = 3;
    private const int Weeks = 6;

    private static readonly LocalTime From = new(9, 0);
    private static readonly LocalTime Until = new(17, 0);

    /// <summary>The next free Saturdays, then the next free Sundays.</summary>
    public static ValueList<ExtraSpell> Of(Projection projection)
    {
        if (projection.Project.Resources.Count == 0 || projection.Project.Resources[Projection.You].Open is not { } open)
            return [];
        var days = Enumerable.Range(1, 7 * Weeks).Select(projection.Clock.Today.PlusDays).ToList();
        return days.Where(day => day.DayOfWeek == IsoDayOfWeek.Saturday).Concat(days.Where(day => day.DayOfWeek == IsoDayOfWeek.Sunday))
            .Select(day => (day, window: new Window(projection.Clock.Minute(day + From), projection.Clock.Minute(day + Until))))
            .Where(one => open.All(window => window.End <= one.window.Start || window.Start >= one.window.End))
            .Take(Most).Select(one => new ExtraSpell(Says(one.day), Projection.You, one.window)).ToValueList();
    }

    private static string Says(LocalDate day) =>
        string.Create(CultureInfo.InvariantCulture, $"{day.DayOfWeek} {day:uuuu-MM-dd} from {From:HH:mm} to {Until:HH:mm}");
}
