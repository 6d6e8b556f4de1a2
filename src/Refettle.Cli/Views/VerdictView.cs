using Refettle.Judging;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>Verdicts, in a list or with all their sums.</summary>
internal static class VerdictView
{
    public static IRenderable Of(Car car, ValueList<VerdictAnswer> answers, bool inFull, decimal? daysLeft)
    {
        if (answers.Count == 0)
            return new Text("Nothing was found of any part yet: refettle find PART says what can be said of it.");
        var date = new Text(daysLeft is { } days
            ? $"{days:0} days to the date to meet."
            : "No date to meet is set; what takes long is not held against it.");
        return new Rows([.. inFull ? answers.Select(IRenderable (answer) => InFull(car, answer)) : new IRenderable[] { List(car, answers) },
            date, new Markup($"[yellow]{Wording.Safety.Safe()}[/]")]);
    }

    private static Table List(Car car, ValueList<VerdictAnswer> answers)
    {
        var table = new Table { Border = TableBorder.None };
        table.AddColumns("Part", "Condition", "Suggested", "Costs", "Yours");
        foreach (var answer in answers)
        {
            table.AddRow(new Text(Name(car, answer.Part)),
                new Text(answer.Condition.Worst is { } worst ? FindingView.Word(worst) : "not looked at"),
                new Text(answer.Suggested is { } best ? Word(best) : "–"), new Text(answer.Suggested is { } one ? Costs(one, car) : ""),
                new Text(answer.Own is { } own
                    ? $"{own.Kind.ToString().ToLowerInvariant()}{(own.By == DoneBy.OutsideShop ? ", outside" : "")}"
                    : ""));
        }

        return table;
    }

    private static Rows InFull(Car car, VerdictAnswer answer)
    {
        var lines = new List<IRenderable>
        {
            new Markup($"[bold]{Name(car, answer.Part).Safe()}[/] ({answer.Part.Safe()}): {(answer.Condition.Worst is { } worst ? FindingView.Word(worst) : "nothing found yet")}"),
        };
        lines.AddRange(FindingView.Lines(answer.Condition));
        lines.Add(new Text(answer.Suggested is { } best
            ? $"Suggested: {Word(best)}."
            : answer.Condition.Worst is null
            ? "No suggestion."
            : "No suggestion: nothing is known that could be done. Tell what you know: refettle estimate."));
        if (answer.Own is { } own)
            lines.Add(new Text(
                $"Yours, and it stays: {own.Kind.ToString().ToLowerInvariant()}{(own.By == DoneBy.OutsideShop ? " by an outside shop" : "")}{(own.Why is null ? "" : $", {own.Why}")}."));
        lines.AddRange(answer.Options.SelectMany(option => Option(option, car)));
        lines.AddRange(answer.Notes.Select(note => new Text($"- {note}")));
        if (answer.Warning is { } warning)
            lines.Add(new Markup($"[yellow]! {warning.Safe()}[/]"));
        return new(lines);
    }

    private static IEnumerable<IRenderable> Option(VerdictOption option, Car car)
    {
        if (option.Cannot is { } why)
        {
            yield return new Markup($"[dim]  {Word(option)}: no, {why.Safe()}[/]");
            yield break;
        }

        yield return new Text(
            $"  {Word(option)}: {Costs(option, car)}{(option.Days > 0 ? $", {option.Days:0.#} days" : "")}{(option.Late > 0 ? $", {option.Late:0.#} days too late" : "")}");
        foreach (var sum in option.Sums)
            yield return new Text(
                $"      {sum.Says}: {sum.Minutes}{(sum.Money.Amount > 0 ? $" ({sum.Money} {car.Currency})" : "")}, {Wording.Of(sum.Origin)}");
    }

    private static string Costs(VerdictOption option, Car car) =>
        option.Sums.Count == 0
            ? "nothing"
            : $"{option.Total} in all{(option.Money.Amount > 0 ? $", {option.Money} {car.Currency} of it" : "")}";

    private static string Word(VerdictOption option) =>
        $"{option.Kind.ToString().ToLowerInvariant()}{(option.By == DoneBy.OutsideShop ? " by an outside shop" : "")}";

    private static string Name(Car car, string part) => car.Structure.Parts.First(one => one.Id == part).Name;
}
