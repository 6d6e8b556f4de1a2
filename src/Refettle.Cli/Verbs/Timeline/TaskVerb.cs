using System.CommandLine;
using NodaTime;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs.Timeline;

internal static class TaskVerb
{
    public static Command Make(Desk desk) =>
        new("task", "Your own say in the timeline: tasks of yours, how long, when, in parts, not on some days, with what, how far.")
    {
        Add(desk), Remove(desk), Takes(desk), Split(desk), Fix(desk), Free(desk), Forbid(desk), Uses(desk),
        Mark(desk, "begun", TaskProgress.Begun, "It is begun: also that an order is out, a wait runs."),
        Mark(desk, "done", TaskProgress.Done, "It is done, or a wait is over. Steps of the plan are marked with refettle done."),
        Mark(desk, "ahead", TaskProgress.Ahead, "It is still ahead after all."),
    };

    private static Command Add(Desk desk)
    {
        var id = Id();
        var minutes = new Option<decimal?>("--minutes")
        { Description = "How long it takes; of a wait, on the wall clock. Of a new one it has to be said." };
        var name = new Option<string?>("--name") { Description = "What it is.", HelpName = "text" };
        var after = Tasks("--after", "Tasks that are finished before it; named without one: none.");
        var before = Tasks("--before", "Tasks that begin only after it; named without one: none.");
        var uses = Tasks("--uses", "Facilities it needs; named without one: none.");
        var wait = new Option<bool?>("--wait") { Description = "Time that passes without anybody." };
        var unbroken = new Option<bool?>("--unbroken") { Description = "From start to finish in one spell." };
        return new Command("add", "Adds a task of your own, or changes one of that name: what is not said stays.") { id, minutes, name,
            after, before, uses, wait, unbroken }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
            {
                var asked = parsed.GetRequiredValue(id);
                var was = open.Car.Calendar.Tasks.FirstOrDefault(task => task.Id == asked);
                if ((parsed.GetValue(minutes) ?? was?.Takes.Value) is not { } takes)
                    return Reply.Bad([new("--minutes", $"nothing is known of {asked} yet", "Say how long it takes: --minutes 90.")]);
                return Write(desk, open, new TaskAdded((was ?? new() { Id = asked, Name = asked, Takes = Minutes.Zero }) with
                {
                    Name = parsed.GetValue(name) ?? was?.Name ?? asked,
                    Takes = new(takes),
                    IsWait = parsed.GetValue(wait) ?? was?.IsWait ?? false,
                    IsUnbroken = parsed.GetValue(unbroken) ?? was?.IsUnbroken ?? false,
                    After = Named(parsed, after) ?? was?.After ?? [],
                    Before = Named(parsed, before) ?? was?.Before ?? [],
                    Uses = Named(parsed, uses) ?? was?.Uses ?? [],
                }));
            }));
    }

    /// <summary>Null where the option is not there at all.</summary>
    private static ValueList<string>? Named(ParseResult parsed, Option<string[]> option) =>
        parsed.GetResult(option) is null ? null : (parsed.GetValue(option) ?? []).ToValueList();

    private static Command Remove(Desk desk) =>
        With(desk, "remove", "Takes out a task of yours.", [], (_, id) => Good(new TaskRemoved(id)));

    private static Command Takes(Desk desk)
    {
        var minutes = new Argument<decimal?>("minutes")
        { Description = "How long it takes you; nothing for the derived figure again.", Arity = ArgumentArity.ZeroOrOne };
        return With(desk, "takes", "Says how long a task takes you, or a wait.", [minutes],
            (parsed, id) => Good(new TaskTimed(id, parsed.Parsed.GetValue(minutes) is { } some ? new Minutes(some) : null)));
    }

    private static Command Split(Desk desk)
    {
        var parts = new Argument<decimal[]>("minutes")
        { Description = "The minutes of the parts; nothing makes it whole again.", Arity = ArgumentArity.ZeroOrMore };
        return With(desk, "split", "Splits a task into parts.", [parts],
            (parsed, id) => Good(new TaskSplit(id, (parsed.Parsed.GetValue(parts) ?? []).Select(part => new Minutes(part)).ToValueList())));
    }

    private static Command Fix(Desk desk)
    {
        var day = new Argument<string>("day") { Description = "2027-01-09, today, +3d, sat." };
        var at = new Argument<string>("time") { Description = "18:30." };
        return With(desk, "fix", "A task starts then.", [day, at], (parsed, id) =>
        {
            var (date, time) =
                (parsed.Days.Day("day", parsed.Parsed.GetRequiredValue(day)), Days.Time("time", parsed.Parsed.GetRequiredValue(at)));
            return date.IsGood && time.IsGood
                ? Good(new TaskFixed(id, date.Value + time.Value))
                : Result<Happening>.Bad([.. date.Faults, .. time.Faults]);
        });
    }

    private static Command Free(Desk desk) =>
        With(desk, "free", "A task may start when it fits.", [], (_, id) => Good(new TaskFixed(id, null)));

    private static Command Forbid(Desk desk)
    {
        var first = new Argument<string>("first") { Description = "The first day without it." };
        var last = new Argument<string?>("last")
        { Description = "The last day without it; by default the same.", Arity = ArgumentArity.ZeroOrOne };
        return With(desk, "forbid", "A task is not worked at on these days.", [first, last], (parsed, id) =>
        {
            var from = parsed.Days.Day("first", parsed.Parsed.GetRequiredValue(first));
            var until = parsed.Days.Day("last", parsed.Parsed.GetValue(last) ?? parsed.Parsed.GetRequiredValue(first));
            return from.IsGood && until.IsGood
                ? Good(new TaskForbidden(id, new(from.Value, until.Value)))
                : Result<Happening>.Bad([.. from.Faults, .. until.Faults]);
        });
    }

    private static Command Uses(Desk desk)
    {
        var uses = new Argument<string[]>("facility")
        { Description = "Facilities; a place has the car there. Nothing: only what is derived.", Arity = ArgumentArity.ZeroOrMore };
        return With(desk, "uses", "What a task needs beside what is derived: a welding bay, a hired tool.", [uses],
            (parsed, id) => Good(new TaskEquipped(id, (parsed.Parsed.GetValue(uses) ?? []).ToValueList())));
    }

    private static Command Mark(Desk desk, string name, TaskProgress progress, string says) =>
        With(desk, name, says, [], (parsed, id) => Good(new TaskMarked(new(id, progress, parsed.Days.NowHere))));

    private sealed record Asked(ParseResult Parsed, Days Days);

    private static Command With(
        Desk desk, string name, string says, IEnumerable<Argument> arguments, Func<Asked, string, Result<Happening>> happening)
    {
        var id = Id();
        var command = new Command(name, says) { id };
        foreach (var argument in arguments)
            command.Add(argument);
        return command.Answers(desk, parsed => desk.WithCar(parsed, open =>
            Reply.To(happening(new(parsed, new(desk.Around, open.Car)), parsed.GetRequiredValue(id)), told => Write(desk, open, told))));
    }

    private static Reply Write(Desk desk, OpenCar open, Happening happening) =>
        desk.Record(open, [happening],
            now => SpellVerb.Said(now, $"{CalendarWords.Sentence(happening)}.")
                .With(TaskNames.Notes(desk, now, Named(happening), Marked(happening))));

    private static string? Marked(Happening happening) =>
        happening is TaskMarked { Mark: { Progress: not TaskProgress.Ahead } mark } ? mark.Task : null;

    /// <summary>Tasks of the timeline that it speaks of.</summary>
    private static IEnumerable<string> Named(Happening happening) => happening switch
    {
        TaskAdded added => added.Task.After.Concat(added.Task.Before),
        TaskTimed timed => [timed.Task],
        TaskSplit split => [split.Task],
        TaskFixed set => [set.Task],
        TaskForbidden forbidden => [forbidden.Task],
        TaskEquipped equipped => [equipped.Task],
        TaskMarked marked => [marked.Mark.Task],
        _ => [],
    };

    private static Result<Happening> Good(Happening happening) => Result<Happening>.Good(happening);

    private static Argument<string> Id() => new("task") { Description = "Its name, as the timeline shows it." };

    private static Option<string[]> Tasks(string name, string says) =>
        new(name) { Description = says, AllowMultipleArgumentsPerToken = true, Arity = ArgumentArity.ZeroOrMore };
}
