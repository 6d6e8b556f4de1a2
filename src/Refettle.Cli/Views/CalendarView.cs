using Refettle.Logbook;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>When there is time, with what, and in which air.</summary>
internal static class CalendarView
{
    public static IRenderable Of(Car car)
    {
        var calendar = car.Calendar;
        var grid = new Grid();
        grid.AddColumn(new GridColumn().NoWrap());
        grid.AddColumn();
        if (calendar.Handover is { } date)
            Row("to meet", $"{DayWords.Moment(date.By)}, {date.What}");
        Row("clock", calendar.TimeZone ?? "UTC, while nobody has said: refettle spell zone Europe/Berlin");
        foreach (var spell in calendar.Spells)
            Row(spell.Id, $"{(spell.Whose is null ? "" : $"{spell.Whose}: ")}{CalendarWords.Of(spell)}");
        foreach (var facility in calendar.Facilities)
            Row(facility.Id, CalendarWords.Of(facility));
        foreach (var task in calendar.Tasks)
            Row(task.Id, $"task: {TaskWords.Of(task, calendar.NameOfTask)}");
        foreach (var terms in calendar.Terms)
            Row(terms.Task, $"set: {TaskWords.Of(terms)}");
        foreach (var month in calendar.Climate)
            Row($"month {month.Month}", $"{month.Celsius:0.#} °C, {month.HumidityPercent:0.#} %, {Wording.Of(month.Origin)}");
        foreach (var reading in calendar.Readings)
            Row(DayWords.Day(reading.Day), $"{reading.Celsius:0.#} °C, {reading.HumidityPercent:0.#} %, read");
        return calendar.Spells.Count > 0
            ? grid
            : new Rows(grid, new Text("No spells yet: refettle spell add evenings --on tue,thu --from 18:30 --until 21:30"));

        void Row(string name, string says) => grid.AddRow(new Text(name), new Text(says));
    }
}
