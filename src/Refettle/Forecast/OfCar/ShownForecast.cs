using NodaTime;

namespace Refettle.Forecast.OfCar;

/// <summary>A forecast as it is shown and given away: without what it was made from. Chances are 0 to 1, each with its standard error;
/// times are by the clock on the wall.</summary>
public sealed record ShownForecast(
    string Says, int Futures, ulong Seed, double Confidence, ShownMoment Half, ShownMoment FourInFive, ShownMoment NineteenInTwenty,
    LocalDateTime? Date, Estimate? ChanceOfDate, Estimate Unfinished,
    ValueList<ShownDeciding> Stranded, ValueList<ShownDeciding> Deciding, ValueList<ShownHelp> Helps, ValueList<ShownOrder> OrderBy,
    ValueList<WindowMissed> TooLate, ValueList<ShownChance> Curve, ValueList<string> Assumed, ValueList<Fault> Notes)
{
    public static ShownForecast Of(CarForecast forecast)
    {
        var answer = forecast.Answer;
        return new(
            ForecastWords.Sentence(forecast), answer.Futures, answer.Seed, forecast.Confidence,
            ShownMoment.Of(forecast, answer.Half), ShownMoment.Of(forecast, answer.FourInFive),
            ShownMoment.Of(forecast, answer.NineteenInTwenty),
            answer.Date is { } date ? forecast.At(date) : null, answer.ChanceOfDate, answer.Unfinished,
            answer.Stranded.Select(one => new ShownDeciding(one.Id, ForecastWords.Stranded(forecast, one), one.Share)).ToValueList(),
            ForecastWords.Decide(forecast, int.MaxValue, int.MaxValue)
                .Select(one => new ShownDeciding(one.Id, forecast.Task(one.Place).Says, one.Share)).ToValueList(),
            answer.Helps.Select(help => new ShownHelp(help.Kind, help.Subject, ForecastWords.Of(forecast, help), help.Chance,
                new(help.Earlier.Value / 1440, help.Earlier.StandardError / 1440))).ToValueList(),
            answer.OrderBy
                .Select(one => new ShownOrder(one.Id, forecast.Task(one.Place).Says, one.Latest is { } latest ? forecast.At(latest) : null,
                    one.ChanceAtOnce)).ToValueList(),
            answer.TooLate, answer.Curve.Select(point => new ShownChance(forecast.At(point.Time), point.Chance)).ToValueList(),
            forecast.Assumed, forecast.Notes);
    }
}

/// <summary>By when, as likely as that.</summary>
/// <param name="At">Null when it lies beyond the calendar.</param>
/// <param name="ErrorDays">Its standard error.</param>
public sealed record ShownMoment(LocalDateTime? At, double ErrorDays)
{
    public static ShownMoment Of(CarForecast forecast, Moment moment) =>
        new(moment.Time is { } time ? forecast.At(time) : null, moment.StandardError / 1440);
}

/// <summary>A task with a share of futures.</summary>
public sealed record ShownDeciding(string Task, string Says, Estimate Share);

/// <summary>What one change would bring.</summary>
/// <param name="Days">Earlier on average.</param>
public sealed record ShownHelp(HelpKind Kind, string Subject, string Says, Estimate? Chance, Estimate Days);

/// <summary>By when to order or send out.</summary>
/// <param name="Latest">Null when even at once is not so sure.</param>
public sealed record ShownOrder(string Task, string Says, LocalDateTime? Latest, Estimate ChanceAtOnce);

/// <summary>The chance to be finished by then.</summary>
public sealed record ShownChance(LocalDateTime At, double Chance);
