using Refettle.Access;
using Refettle.Scope;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>Which jobs are worth doing.</summary>
internal static class ScopeView
{
    public static IRenderable Of(Car car, ScopeAnswer answer, ScopeReasons reasons)
    {
        if (answer.Status == PlanStatus.Impossible)
            return new Rows([new Text("There is no choice to show:"), .. answer.Obstacles.Select(obstacle => new Text($"  {obstacle}"))]);
        return new Rows(
            new Markup($"[bold]{answer.Chosen.Count} of {answer.Chosen.Count + answer.Left.Count} jobs are worth doing[/] — {Sure(car, answer).Safe()}"),
            new Text(Sum(car, answer)), new Text(Limits(car, answer)), Text.Empty,
            Jobs(car, answer, reasons), Text.Empty, Left(car, answer, reasons), First(car, reasons),
            new Text("Worths and minutes are as sure as who gave them; the order of work, and with it the date, is for the timeline: refettle timeline."));
    }

    /// <summary>With a sign: what a job adds.</summary>
    public static string Takes(ScopeSum takes, string currency)
    {
        var hours = takes.Time.Value / 60;
        return $"{(hours < 0 ? "−" : "+")}{Math.Abs(hours):0.0} h, {(takes.Money.Amount < 0 ? "−" : "+")}{Math.Abs(takes.Money.Amount):0} {currency}";
    }

    /// <summary>What is off anyway, in words.</summary>
    public static string Since(Car car, Fact? since) => since is not { } fact ? "" : $"since {Name(car, fact.Subject)} is off";

    private static string Sure(Car car, ScopeAnswer answer) => answer.Status == PlanStatus.Optimal
        ? "proven: no choice gains more"
        : $"a valid choice; none gains more than {answer.Bound:0} {car.Currency}, whether one gains more than this is not known";

    private static string Sum(Car car, ScopeAnswer answer)
    {
        var (sum, rate) = (answer.Sum, answer.Question.PerHour.Amount);
        var unique = sum.Unique > Minutes.Zero ? $" − {sum.Unique.Value * rate / 60:0} for touching what is unique" : "";
        return $"Gain {answer.Gain:0} {car.Currency} = worth {sum.Worth:0} − money {sum.Money.Amount:0} − {sum.Time.Value / 60:0.0} h ({sum.Opening.Value / 60:0.0} opening and closing, {sum.Work.Value / 60:0.0} work) at {rate:0.##}{unique}";
    }

    private static string Limits(Car car, ScopeAnswer answer)
    {
        var question = answer.Question;
        string?[] limits =
        [
            question.Hours is { } hours ? $"{hours.Value / 60:0.#} h" : null,
            question.Budget is { } budget ? $"{budget.Amount:0.##} {car.Currency}" : null,
            question.Until is { } until
                ? $"{until.Days} days{(until.Spells is { } spells ? $" with {spells.Value / 60:0.#} h in spells" : ", no spells entered")}"
                : null,
        ];
        return limits.All(limit => limit is null) ? "No limit was given." : $"Of {string.Join(", ", limits.OfType<string>())}.";
    }

    private static Table Jobs(Car car, ScopeAnswer answer, ScopeReasons reasons)
    {
        var table = new Table { Border = TableBorder.None };
        table.AddColumns("In", "", "What", "Worth", "Given the rest", "");
        table.Columns[3].RightAligned().NoWrap();
        table.Columns[4].RightAligned().NoWrap();
        foreach (var job in answer.Chosen.Select(id => car.Jobs.First(job => job.Id == id)))
        {
            var cost = reasons.Costs.FirstOrDefault(cost => cost.Job == job.Id);
            table.AddRow(
                new Text(job.Id), new Text(JobView.Word(job.Wish)), new Text(job.Name), new Text($"{job.Worth}"),
                new Text(cost is null ? "" : Takes(cost.Takes, car.Currency)), new Text(cost is null ? "" : Note(car, cost)));
        }

        return table;
    }

    private static string Note(Car car, JobCost cost) => string.Join("; ", new[]
    {
        Since(car, cost.Since), cost.Along.Count == 0 ? "" : $"with {string.Join(", ", cost.Along)}",
    }.Where(note => note.Length > 0));

    private static IRenderable Left(Car car, ScopeAnswer answer, ScopeReasons reasons)
    {
        if (answer.Left.Count == 0)
            return new Text("Nothing is left.");
        var table = new Table { Border = TableBorder.None };
        table.AddColumns("Left", "", "What", "Worth", "Would take", "");
        table.Columns[3].RightAligned().NoWrap();
        table.Columns[4].RightAligned().NoWrap();
        foreach (var left in answer.Left)
        {
            var (job, cost) = (car.Jobs.First(job => job.Id == left.Job), reasons.Costs.FirstOrDefault(cost => cost.Job == left.Job));
            table.AddRow(
                new Text(job.Id), new Text(JobView.Word(job.Wish)), new Text(job.Name), new Text($"{job.Worth}"),
                new Text(cost is null ? "" : Takes(cost.Takes, car.Currency)), new Text(Why(left.Why)));
        }

        return table;
    }

    private static Rows First(Car car, ScopeReasons reasons) => new([Text.Empty, .. reasons.First.Select(first => new Text(
        $"Short of {(first.Short == ScopeLimit.Time ? "time" : "money")}, {string.Join(", ", first.Gone)} {(first.Gone.Count == 1 ? "goes" : "go")} first{(first.Instead.Count == 0 ? "" : $", and {string.Join(", ", first.Instead)} {(first.Instead.Count == 1 ? "comes" : "come")} in")}: the gain falls by {first.Loses:0} {car.Currency}, "
        + $"leaving {first.Sum.Time.Value / 60:0.0} h and {first.Sum.Money.Amount:0} {car.Currency} spent."))]);

    private static string Why(WhyLeft why) => why switch
    {
        WhyLeft.NoRoom => "no room beside what brings more",
        WhyLeft.WaitsTooLong => "its waits last beyond the day",
        WhyLeft.OutOfReach => "what it needs cannot be opened",
        WhyLeft.LeftAlone => "left alone as you asked",
        _ => "brings less than it takes",
    };

    private static string Name(Car car, string id) =>
        car.Structure.Parts.FirstOrDefault(part => part.Id == id)?.Name
        ?? car.Structure.SubAssemblies.FirstOrDefault(unit => unit.Id == id)?.Name ?? id;
}
