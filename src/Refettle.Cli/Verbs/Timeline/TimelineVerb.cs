using System.CommandLine;
using NodaTime;
using NodaTime.Extensions;
using Refettle.Cli.Commands;
using Refettle.Cli.Forms;
using Refettle.Cli.Views;
using Refettle.Logbook;
using Refettle.Sheets.Calendars;
using Refettle.Stock.Baskets;
using Refettle.Timeline;
using Refettle.Timeline.Scheduling;

namespace Refettle.Cli.Verbs.Timeline;

internal static class TimelineVerb
{
    private const double MostSeconds = 86_400;

    public static Command Make(Desk desk)
    {
        var seconds = new Option<double>("--seconds")
        { Description = "How long to look for a better order; Ctrl-C ends it and keeps the best.", DefaultValueFactory = _ => 10 };
        var ics = new Option<string>("--ics") { Description = "Also write it as a calendar file.", HelpName = "file" };
        var keep = new Option<bool>("--keep") { Description = "Keep it: later timelines are shown against this one." };
        var all = new Option<bool>("--all") { Description = "Also what takes no time." };
        return new Command("timeline", "When what is done, and when the car is finished.") { TimelineGoals.Named, seconds, ics, keep, all }
            .Answers(desk, parsed => parsed.GetValue(seconds) is not (>= 0 and <= MostSeconds)
                ? Reply.Bad([new("--seconds", $"{parsed.GetValue(seconds)} seconds", $"Give 0 to {MostSeconds}.")])
                : TimelineGoals.With(desk, parsed, (open, supplied) => Reply.To(Answer(desk, supplied, parsed.GetValue(seconds)), answer =>
                    Written(desk, open, answer, parsed.GetValue(ics),
                        () => Kept(desk, open, answer, parsed.GetValue(keep), parsed.GetValue(all))))));
    }

    /// <summary>The best timeline until the time is over, or until Ctrl-C.</summary>
    public static Result<TimelineAnswer> Answer(Desk desk, SuppliedWork supplied, double seconds)
    {
        var scheduler = seconds > 0 ? desk.Around.Scheduler() : new FirstScheduler();
        return new TimelinePlanner(scheduler)
            .Of(supplied.Work.Ask(supplied.Now), new(TimeSpan.FromSeconds(seconds)), new Telling(desk.Around), desk.Around.Interrupt);
    }

    private static Reply Written(Desk desk, OpenCar open, TimelineAnswer answer, string? file, Func<Reply> then)
    {
        if (file is null)
            return then();
        var text = TimelineWriter.Write(answer, open.Car.Id, desk.Around.Clock.GetCurrentInstant());
        return Reply.To(TextFile.Write(desk.PathOf(file), text), _ => then());
    }

    private static Reply Kept(Desk desk, OpenCar open, TimelineAnswer answer, bool keep, bool all)
    {
        var reply = new Reply(TimelineTable.Of(answer, all), TimelineForm.Of(answer))
        { Code = CodeOf(desk, answer), Faults = answer.Notes };
        if (!keep || answer.Tasks.Count == 0)
            return reply;
        var kept = new TimelineKept(answer.Tasks.Select(task => new KeptTask(task.Task.Id, task.Start, task.Finish)).ToValueList());
        return desk.Record(open, [kept], _ => reply);
    }

    private static ExitCode CodeOf(Desk desk, TimelineAnswer answer) =>
        answer.Tasks.Count > 0 || answer.Status == ScheduleStatus.Optimal ? ExitCode.Good
        : desk.Around.Interrupt.IsCancellationRequested ? ExitCode.Interrupted : ExitCode.Impossible;

    /// <summary>A line on the error stream for every better finish, while a person watches.</summary>
    private sealed class Telling(Surroundings around) : IProgress<TimelineAnswer>
    {
        private LocalDateTime? _last;

        public void Report(TimelineAnswer value)
        {
            if (!around.IsWatched || value.Finish is not { } finish || finish == _last)
                return;
            _last = finish;
            around.Error.WriteLine($"\rfinished {DayWords.Moment(finish)} …");
        }
    }
}
