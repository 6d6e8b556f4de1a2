using System.Globalization;

namespace Refettle.Forecast.OfCar;

/// <summary>A forecast in plain words.</summary>
public static class ForecastWords
{
    /// <summary>The whole in one or two sentences.</summary>
    public static string Sentence(CarForecast forecast)
    {
        var answer = forecast.Answer;
        var finish = $"As likely as not it is finished {By(forecast, answer.Half)}; four times in five {By(forecast, answer.FourInFive)}, nineteen in twenty {By(forecast, answer.NineteenInTwenty)}.";
        return answer is { Date: { } date, ChanceOfDate: { } chance }
            ? $"{finish} Your date, {DayWords.Moment(forecast.At(date))}, is met in {Percent(chance)} of {answer.Futures.ToString("N0", CultureInfo.InvariantCulture)} sampled futures."
            : finish;
    }

    /// <summary>By a day, or that the windows do not reach so far.</summary>
    public static string By(CarForecast forecast, Moment moment) =>
        moment.Time is { } time ? $"by {DayWords.Day(forecast.At(time).Date)}" : "not within your calendar";

    /// <summary>What decides the finish, of what takes time: the works that lie longest on the deciding chain, and the waits.</summary>
    public static IEnumerable<Deciding> Decide(CarForecast forecast, int works, int waits)
    {
        var all = forecast.Answer.Deciding.Where(one => forecast.Task(one.Place).Takes > Minutes.Zero)
            .OrderByDescending(one => one.Share.Value * (double)forecast.Task(one.Place).Takes.Value).ToList();
        return all.Where(one => forecast.Task(one.Place).IsWait).Take(waits)
            .Concat(all.Where(one => !forecast.Task(one.Place).IsWait).Take(works))
            .OrderByDescending(one => one.Share.Value);
    }

    /// <summary>Why some futures never finish.</summary>
    public static string Stranded(CarForecast forecast, Deciding stranded) =>
        $"In {Percent(stranded.Share)} of futures no time is left in your calendar for: {forecast.Task(stranded.Place).Says}{(forecast.Task(stranded.Place).Uses is { Count: > 0 } uses ? $" (it needs {string.Join(", ", uses)})" : "")}";

    /// <summary>A chance with its standard error; where it is near 0 or 1, what can be said.</summary>
    public static string Percent(Estimate chance) => chance.Value switch
    {
        > 0.999 => "more than 99.9 %",
        < 0.001 => "less than 0.1 %",
        _ => string.Create(CultureInfo.InvariantCulture, $"{100 * chance.Value:0.0} % (± {100 * chance.StandardError:0.0})"),
    };

    /// <summary>What would help.</summary>
    public static string Of(CarForecast forecast, Help help) => help.Kind switch
    {
        HelpKind.Halve => $"In half the time: {forecast.Says(help.Subject)}",
        HelpKind.Sooner => $"A week sooner: {forecast.Says(help.Subject)}",
        HelpKind.Extra => $"One more day in the garage: {help.Subject}",
        _ => "No spell missed",
    };

    /// <summary>What a help brings.</summary>
    public static string Gain(Help help)
    {
        var days = string.Create(CultureInfo.InvariantCulture,
            $"{help.Earlier.Value / 1440:0.0} days (± {help.Earlier.StandardError / 1440:0.0}) earlier on average");
        return help.Chance is { } chance
            ? string.Create(CultureInfo.InvariantCulture,
                $"{100 * chance.Value:+0.0;-0.0} points (± {100 * chance.StandardError:0.0}) for the date, {days}")
            : days;
    }

    /// <summary>By when it must be ordered or sent out.</summary>
    public static string Of(CarForecast forecast, LatestStart latest) => latest.Latest is { } time
        ? $"by {DayWords.Moment(forecast.At(time))}"
        : $"at once: even so it holds nothing up in only {Percent(latest.ChanceAtOnce)}";
}
