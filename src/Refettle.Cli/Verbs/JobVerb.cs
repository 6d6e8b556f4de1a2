using System.CommandLine;
using NodaTime;
using NodaTime.Extensions;
using Refettle.Cli.Views;
using Refettle.Logbook;
using Refettle.Scope;
using Refettle.Sheets.Edits;
using Refettle.Timeline.Spells;
using Spectre.Console;

namespace Refettle.Cli.Verbs;

internal static class JobVerb
{
    public static Command Make(Desk desk) => new("job", "What you may want done, and what it is worth.")
    {
        Add(desk), Set(desk), List(desk), Drop(desk), Done(desk),
    };

    private static Command Add(Desk desk)
    {
        var (id, values, anyway) = (Id(), Values(), Anyway());
        return new Command("add", "Thinks of a job: name, wish (must, want, maybe), goals, worth, work, parts, waits, with.") { id, values,
            anyway }
            .Answers(desk, parsed => desk.WithCar(parsed, open => Known(open.Car, parsed.GetRequiredValue(id)) is null
                ? Enter(desk, open, new() { Id = parsed.GetRequiredValue(id), Name = Words(parsed.GetRequiredValue(id)) },
                    parsed.GetValue(values), parsed.GetValue(anyway))
                : Reply.Bad([new($"job {parsed.GetValue(id)}", "there is one by this name",
                    "Change it with refettle job set, or take another name.")])));
    }

    private static Command Set(Desk desk)
    {
        var (id, values, anyway) = (Id(), Values(), Anyway());
        return new Command("set", "Changes a job; a list that begins with + adds to what is there.") { id, values, anyway }
            .Answers(desk, parsed => desk.WithCar(parsed, open => Known(open.Car, parsed.GetRequiredValue(id)) is { } job
                ? Enter(desk, open, job, parsed.GetValue(values), parsed.GetValue(anyway))
                : Reply.Bad([Unknown(open.Car, parsed.GetRequiredValue(id))])));
    }

    private static Command List(Desk desk) => new Command("list", "All jobs.")
        .Answers(desk, parsed => desk.WithCar(parsed, open => Shown(open.Car)));

    private static Command Drop(Desk desk)
    {
        var id = Id();
        var why = new Option<string>("--why") { Description = "Why it is given up." };
        return new Command("drop", "Gives a job up.") { id, why }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
                desk.Record(open, [new JobDropped(parsed.GetRequiredValue(id), parsed.GetValue(why))], now => Shown(now.Car))));
    }

    private static Command Done(Desk desk)
    {
        var id = Id();
        var minutes = new Option<decimal?>("--minutes") { Description = "How long its own work took, without opening and closing." };
        return new Command("done", "Marks a job as done.") { id, minutes }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
                desk.Record(open,
                    [new JobDone(parsed.GetRequiredValue(id), parsed.GetValue(minutes) is { } took ? new Minutes(took) : null)],
                    now => Shown(now.Car))));
    }

    private static Reply Enter(Desk desk, OpenCar open, Job job, string[]? values, bool anyway) =>
        Reply.To(KeyValue.Read(values ?? []),
            keys => Reply.To(JobEdit.Of(job, keys), changed => !anyway && Brakes(desk, open, changed) is { Count: > 0 } faults
            ? Reply.Bad(faults)
            : desk.Record(open, [new JobEntered(changed)], now => Reply.Said(
                $"Job {changed.Id}, {JobView.Word(changed.Wish)}: {changed.Name}.", new { car = now.Car.Id, job = changed }))));

    /// <summary>A must that breaks what there is to spend is told before it is taken on; a want or maybe commits to nothing.</summary>
    private static ValueList<Fault> Brakes(Desk desk, OpenCar open, Job job)
    {
        var car = open.Car with { Jobs = open.Car.Jobs.Where(known => known.Id != job.Id).Append(job).ToValueList() };
        if (job.Wish != Wish.Must || open.Car.Means == Means.NoLimit
            || HappeningCheck.Of(open.History, new JobEntered(job)).Any(fault => fault.Severity == Severity.Error))
            return [];
        var question = ScopeDays.Question(car, desk.Around.Clock.GetCurrentInstant());
        if (ScopeQuestionCheck.Of(car, question).Count > 0)
            return [];
        var brake = desk.Scoper.Add(car, question, job.Id, cancel: desk.Around.Interrupt);
        return brake.Breaches.Count == 0
            ? []
            : [new($"job {job.Id}", string.Join("; ", BrakeView.Lines(car, brake)),
                "Nothing was recorded. Take it on all the same with --anyway.")];
    }

    private static Reply Shown(Car car) =>
        new(JobView.Of(car), new { car = car.Id, means = car.Means, jobs = car.Jobs, done = car.JobsDone, scope = car.Scope });

    private static Job? Known(Car car, string id) => car.Jobs.FirstOrDefault(job => job.Id == id);

    private static Fault Unknown(Car car, string id) =>
        new($"job {id}", "there is no such job",
            NearNames.Ask(id, car.Jobs.Select(job => job.Id), "refettle job list shows them; refettle job add makes one."));

    private static string Words(string id)
    {
        var words = id.Replace('-', ' ');
        return words.Length == 0 ? id : char.ToUpperInvariant(words[0]) + words[1..];
    }

    private static Option<bool> Anyway() => new("--anyway") { Description = "Even if, as a must, it breaks what there is to spend." };

    private static Argument<string> Id() => new("id") { Description = "Its name in one word: small letters, digits and -." };

    private static Argument<string[]> Values() =>
        new("key=value") { Description = "Keys and values (docs/scope.md).", Arity = ArgumentArity.ZeroOrMore };
}
