using System.CommandLine;
using System.Globalization;
using NodaTime;
using NodaTime.Extensions;
using NodaTime.Text;

namespace Refettle.Cli.Verbs.Timeline;

/// <summary>Days and times as they are typed: <c>2027-01-09</c>, <c>today</c>, <c>+10d</c>, <c>+6w</c>, <c>sat</c> (the next, today
/// counts), <c>sat+5w</c>; <c>18:30</c>.</summary>
internal sealed class Days(Surroundings around, Car car)
{
    private const string Form = "Write it as 2027-01-09, today, +10d, +6w, sat or sat+5w.";

    private static readonly LocalTimePattern Clock = LocalTimePattern.CreateWithInvariantCulture("H:mm");

    public static readonly string[] Short = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];

    /// <summary>The moment now.</summary>
    public Instant Now => around.Clock.GetCurrentInstant();

    public LocalDateTime NowHere =>
        Now.InZone(car.Calendar.TimeZone is { } zone ? DateTimeZoneProviders.Tzdb[zone] : DateTimeZone.Utc).LocalDateTime;

    public Result<LocalDate> Day(string place, string text)
    {
        if (LocalDatePattern.Iso.Parse(text) is { Success: true } day)
            return Result<LocalDate>.Good(day.Value);
        var (name, later) = text.IndexOf('+', StringComparison.Ordinal) is >= 0 and var plus
            ? (text[..plus], text[(plus + 1)..])
            : (text, "0d");
        if (From(name) is not { } from || later.Length < 2
            || !int.TryParse(later[..^1], NumberStyles.None, CultureInfo.InvariantCulture, out var number) || number > 10_000
            || later[^1] is not ('d' or 'w'))
            return Result<LocalDate>.Bad(new Fault(place, $"\"{text}\" is not a day", Form));
        return Result<LocalDate>.Good(later[^1] == 'w' ? from.PlusWeeks(number) : from.PlusDays(number));
    }

    public static Result<LocalTime> Time(string place, string text) => Clock.Parse(text) is { Success: true } time
        ? Result<LocalTime>.Good(time.Value)
        : Result<LocalTime>.Bad(new Fault(place, $"\"{text}\" is not a time of day", "Write it as 18:30."));

    public static Result<ValueList<IsoDayOfWeek>> Week(IEnumerable<string> texts)
    {
        var words = texts.SelectMany(text => text.Split(',', StringSplitOptions.RemoveEmptyEntries)).ToList();
        var faults = words.Where(word => Weekday(word) is null)
            .Select(word => new Fault("--on", $"\"{word}\" is not a day of the week", $"Write {string.Join(", ", Short)}, or daily."))
            .ToList();
        return faults.Count > 0 ? Result<ValueList<IsoDayOfWeek>>.Bad(faults)
            : Result<ValueList<IsoDayOfWeek>>.Good(words.Select(word => Weekday(word)!.Value).Distinct().Order().ToValueList());
    }

    public static Option<string> Option(string name, string says) => new(name) { Description = says, HelpName = "day" };

    private LocalDate? From(string name)
    {
        var today = NowHere.Date;
        return name is "" or "today" ? today
            : Weekday(name) is { } day ? (today.DayOfWeek == day ? today : today.Next(day))
            : null;
    }

    private static IsoDayOfWeek? Weekday(string word) =>
        Array.IndexOf(Short, word.ToLowerInvariant()) is >= 0 and var place ? (IsoDayOfWeek)(place + 1) : null;
}
