using System.CommandLine;
using System.Globalization;
using NodaTime;
using NodaTime.Extensions;
using Refettle.Access;
using Refettle.Cli.Forms;
using Refettle.Cli.Verbs.Timeline;
using Refettle.Cli.Views;
using Refettle.Logbook;
using Refettle.Scope;
using Refettle.Sheets.Edits;
using Refettle.Timeline.Spells;

namespace Refettle.Cli.Verbs;

internal static class ScopeVerb
{
    private static readonly Option<decimal?> _budget = new("--budget")
    { Description = "Money there is; by default that of refettle means." };
    private static readonly Option<string> _hours = new("--hours")
    { Description = "Time of your own there is, such as 60h or 60, in hours.", HelpName = "time" };
    private static readonly Option<string> _by = new("--by")
    { Description = "The day to meet, such as 2027-05-08 or sat+5w; by default that of the means or the handover.", HelpName = "day" };
    private static readonly Option<decimal?> _perHour = new("--per-hour")
    { Description = "Money that an hour is worth; by default that of refettle settings." };
    private static readonly Option<decimal?> _perPoint = new("--per-point") { Description = "Money that a point is worth." };
    private static readonly Option<string[]> _also = new("--also")
    { Description = "Jobs that are in, whatever they take.", HelpName = "job", AllowMultipleArgumentsPerToken = true };
    private static readonly Option<string[]> _leave = new("--leave")
    { Description = "Jobs to leave alone.", HelpName = "job", AllowMultipleArgumentsPerToken = true };
    private static readonly Option<string> _try = new("--try")
    { Description = "Say only whether this job fits beside those chosen, and what it breaks.", HelpName = "job" };
    private static readonly Option<string> _frontier = new("--frontier")
    {
        Description = "Show the greatest gain for one limit after another: time or money.",
        HelpName = "limit",
        Arity = ArgumentArity.ZeroOrOne
    };
    private static readonly Option<int> _points = new("--points")
    { Description = "Points of the frontier.", DefaultValueFactory = _ => 20 };
    private static readonly Option<bool> _keep = new("--keep")
    { Description = "Choose these jobs: timeline, basket and books go by them." };

    public static Command Make(Desk desk) => new Command("scope", "Which jobs are worth doing with what you have to spend.")
    {
        _budget, _hours, _by, _perHour, _perPoint, _also, _leave, _try, _frontier, _points, _keep, SinceOpen.Asked, SinceOpen.Take,
    }.Answers(desk,
        parsed => desk.WithCar(parsed,
            open => SinceOpen.IsAsked(parsed)
                ? SinceOpen.Answer(desk, parsed, open)
                : Reply.To(Question(desk, parsed, open.Car), question =>
        ScopeQuestionCheck.Of(open.Car, question) is { Count: > 0 } faults ? Reply.Bad(faults)
            : parsed.GetValue(_try) is { } job ? Tried(desk, open.Car, question, job)
            : parsed.GetResult(_frontier) is { Implicit: false } ? Frontier(desk, parsed, open.Car, question)
            : Chosen(desk, open, question, parsed.GetValue(_keep)))));

    private static Result<ScopeQuestion> Question(Desk desk, ParseResult parsed, Car car)
    {
        var (by, hours) = (By(desk, parsed, car), Hours(parsed));
        if (!by.IsGood || !hours.IsGood)
            return Result<ScopeQuestion>.Bad(by.Faults.Concat(hours.Faults));
        var own = ScopeDays.Question(car, desk.Around.Clock.GetCurrentInstant(), by.Value);
        return Result<ScopeQuestion>.Good(own with
        {
            Budget = parsed.GetValue(_budget) is { } budget ? new Money(budget) : own.Budget,
            Hours = hours.Value ?? own.Hours,
            PerHour = parsed.GetValue(_perHour) is { } rate ? new Money(rate) : own.PerHour,
            PerPoint = parsed.GetValue(_perPoint) is { } point ? new Money(point) : own.PerPoint,
            Also = (parsed.GetValue(_also) ?? []).ToValueList(),
            Leave = (parsed.GetValue(_leave) ?? []).ToValueList(),
        });
    }

    private static Result<LocalDate?> By(Desk desk, ParseResult parsed, Car car)
    {
        if (parsed.GetValue(_by) is not { } text)
            return Result<LocalDate?>.Good(null);
        var day = new Days(desk.Around, car).Day("--by", text);
        return day.IsGood ? Result<LocalDate?>.Good(day.Value) : Result<LocalDate?>.Bad(day.Faults);
    }

    /// <summary>A bare number is hours, as the option's name says; with a unit it is read as the means are.</summary>
    private static Result<Minutes?> Hours(ParseResult parsed)
    {
        if (parsed.GetValue(_hours) is not { } text)
            return Result<Minutes?>.Good(null);
        var time = decimal.TryParse(text, NumberStyles.Number, CultureInfo.InvariantCulture, out _) ? $"{text} h" : text;
        var read = JobEdit.Of(new Means(null, null, null, null), [new KeyValue("hours", time, false)]);
        return read is { IsGood: true, Value.Hours: { } hours } ? Result<Minutes?>.Good(hours)
            : Result<Minutes?>.Bad(new Fault("--hours", $"\"{text}\" is no time", "Write it like 60h, or 60 for hours."));
    }

    private static Reply Chosen(Desk desk, OpenCar open, ScopeQuestion question, bool keep)
    {
        var answer = desk.Scoper.Choose(open.Car, question, desk.Around.Interrupt);
        var reasons = desk.Scoper.Explain(open.Car, answer, desk.Around.Interrupt);
        var reply = new Reply(ScopeView.Of(open.Car, answer, reasons), ScopeForm.Of(answer, reasons))
        {
            Code = answer.Status == PlanStatus.Impossible ? ExitCode.Impossible : ExitCode.Good,
        };
        return keep && answer.Status != PlanStatus.Impossible ? desk.Record(open, [new ScopeChosen(answer.Chosen)], _ => reply) : reply;
    }

    private static Reply Tried(Desk desk, Car car, ScopeQuestion question, string job)
    {
        if (car.Jobs.All(known => known.Id != job) || car.JobsDone.Contains(job))
            return Reply.Bad([new($"job {job}", "there is no such open job",
                NearNames.Ask(job, car.Jobs.Select(known => known.Id), "refettle job list shows them."))]);
        var brake = desk.Scoper.Add(car, question, job, cancel: desk.Around.Interrupt);
        return new(BrakeView.Of(car, brake), brake);
    }

    private static Reply Frontier(Desk desk, ParseResult parsed, Car car, ScopeQuestion question)
    {
        var word = parsed.GetValue(_frontier) ?? "time";
        if (word is not ("time" or "money"))
            return Reply.Bad([new("--frontier", $"\"{word}\" is not a limit", "Write time or money.")]);
        var limit = word == "time" ? ScopeLimit.Time : ScopeLimit.Money;
        var points = desk.Scoper.Frontier(car, question, limit, Math.Clamp(parsed.GetValue(_points), 2, 200),
            new Telling(desk.Around, limit), desk.Around.Interrupt);
        return new(FrontierView.Of(car, limit, points, desk.Around.Interrupt.IsCancellationRequested), new { limit, points });
    }

    /// <summary>A line on the error stream for every point, while a person watches.</summary>
    private sealed class Telling(Surroundings around, ScopeLimit limit) : IProgress<FrontierPoint>
    {
        public void Report(FrontierPoint value)
        {
            if (around.IsWatched)
                around.Error.WriteLine($"\r{FrontierView.Limit(limit, value.Limit)}: {value.Jobs.Count} jobs …");
        }
    }
}
