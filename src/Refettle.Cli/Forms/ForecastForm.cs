using NodaTime;
using Refettle.Forecast;
using Refettle.Forecast.OfCar;

namespace Refettle.Cli.Forms;

/// <summary>A forecast as <c>--json</c> gives it. Chances are 0 to 1, each with its standard error; times are by the clock on the wall.</summary>
internal sealed record ForecastForm(
    string Says, int Futures, ulong Seed, double Confidence, MomentForm Half, MomentForm FourInFive, MomentForm NineteenInTwenty, LocalDateTime? Date, Estimate? ChanceOfDate, Estimate Unfinished,
    ValueList<DecidingForm> Stranded, ValueList<DecidingForm> Deciding, ValueList<HelpForm> Helps, ValueList<OrderByForm> OrderBy, ValueList<WindowMissed> TooLate, ValueList<ChanceForm> Curve, ValueList<string> Assumed, ValueList<Fault> Notes)
{
    public static ForecastForm Of(CarForecast forecast)
    {
        var answer = forecast.Answer;
        return new(
            ForecastWords.Sentence(forecast), answer.Futures, answer.Seed, forecast.Confidence,
            MomentForm.Of(forecast, answer.Half), MomentForm.Of(forecast, answer.FourInFive), MomentForm.Of(forecast, answer.NineteenInTwenty),
            answer.Date is { } date ? forecast.At(date) : null, answer.ChanceOfDate, answer.Unfinished,
            answer.Stranded.Select(one => new DecidingForm(one.Id, forecast.Task(one.Place).Says, one.Share)).ToValueList(),
            answer.Deciding.Select(one => new DecidingForm(one.Id, forecast.Task(one.Place).Says, one.Share)).ToValueList(),
            answer.Helps.Select(help => new HelpForm(help.Kind, help.Subject, ForecastWords.Of(forecast, help), help.Chance, new(help.Earlier.Value / 1440, help.Earlier.StandardError / 1440))).ToValueList(),
            answer.OrderBy.Select(one => new OrderByForm(one.Id, forecast.Task(one.Place).Says, one.Latest is { } latest ? forecast.At(latest) : null, one.ChanceAtOnce)).ToValueList(),
            answer.TooLate, answer.Curve.Select(point => new ChanceForm(forecast.At(point.Time), point.Chance)).ToValueList(), forecast.Assumed, forecast.Notes);
    }
}

/// <param name="At">Null when it lies beyond the calendar.</param>
/// <param name="ErrorDays">Its standard error.</param>
internal sealed record MomentForm(LocalDateTime? At, double ErrorDays)
{
    public static MomentForm Of(CarForecast forecast, Moment moment) => new(moment.Time is { } time ? forecast.At(time) : null, moment.StandardError / 1440);
}

internal sealed record DecidingForm(string Task, string Says, Estimate Share);

/// <param name="Days">Earlier on average.</param>
internal sealed record HelpForm(HelpKind Kind, string Subject, string Says, Estimate? Chance, Estimate Days);

/// <param name="Latest">Null when even at once is not so sure.</param>
internal sealed record OrderByForm(string Task, string Says, LocalDateTime? Latest, Estimate ChanceAtOnce);

internal sealed record ChanceForm(LocalDateTime At, double Chance);
