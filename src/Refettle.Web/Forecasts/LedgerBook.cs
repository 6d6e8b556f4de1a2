using System.Globalization;
using Refettle.Access;
using Refettle.Forecast;
using Refettle.Ledger;
using Refettle.Logbook;
using Refettle.Stock;
using Refettle.Web.Edits;

namespace Refettle.Web.Forecasts;

/// <summary>A car's books in words.</summary>
/// <param name="Sum">Spent and owed in a sentence.</param>
/// <param name="Unpriced">What carries no price; empty when all do.</param>
/// <param name="Jobs">Each job with its sums.</param>
/// <param name="Lines">Each entry, the newest first.</param>
public sealed record LedgerBook(
    string Currency, string Sum, string Unpriced, string ToCome, string Learned, ValueList<(string Name, string Says)> Jobs,
    ValueList<(string Name, string Says)> Lines)
{
    /// <summary>How many jobs are left out; empty when none is.</summary>
    public string NotChosen { get; private init; } = "";

    private const ulong Seed = 1;

    // A browser is slow at this, and the ledger wants a figure, not its third digit.
    private const int Futures = 1_000;

    /// <summary>The kinds of spending with their words.</summary>
    public static ValueList<(SpendKind Kind, string Word)> Kinds { get; } =
        [(SpendKind.Consumables, "used up: discs, paint, cleaner"), (SpendKind.Parts, "parts"), (SpendKind.OutsideWork, "outside work"),
            (SpendKind.Tools, "tools"), (SpendKind.Other, "other")];

    /// <param name="plan">Its steps are still to come; null when none is here.</param>
    public static LedgerBook Of(CarHistory history, Plan? plan)
    {
        var books = BooksFold.Of(history, ShelfFold.Of([history]));
        var steps = plan?.Steps.Where(step => !history.Car.Done.Contains(step.Fact))
            .SelectMany(step => new[] { step.Cost.Open, step.Cost.Close }) ?? [];
        var toCome = StillToCome.Of(history.Car, books, steps, Seed, Futures);
        return new(
            books.Currency,
            $"Spent {Money(books.Spent)} {books.Currency} and {books.Worked}; {Money(books.Owed)} owed.",
            string.Join(", ", books.Unpriced.Select(line => line.Says)),
            $"By plan {toCome.PlannedWork} and {Money(toCome.PlannedMoney)}{(plan is null ? ", without opening and closing, for which no plan is here" : "")}. As likely as not up to {toCome.WorkHalf} and {Money(toCome.MoneyHalf)}; four times in five up to {toCome.WorkFourInFive} and {Money(toCome.MoneyFourInFive)}.",
            $"Your hours: {Taught(toCome.Pace, "timed task")} Your money: {Taught(toCome.Price, "finished job")}",
            books.JobsThatCount.Select(job => (job.Name, Says(job))).ToValueList(),
            books.Money.Reverse().Select(line => ($"{line.On:yyyy-MM-dd}: {line.Says}", Says(line))).ToValueList())
        { NotChosen = books.NotChosen };
    }

    /// <summary>A receipt from what was typed.</summary>
    public static Result<Happening> Read(string amount, string what, SpendKind kind, string job, string receipt, DateOnly today) =>
        TypedNumber.Of(amount) is { } money && money >= 0
            ? Result<Happening>.Good(new MoneySpent(new(new(money), what.Trim(), kind, job.Length == 0 ? null : $"job {job}", null,
                string.IsNullOrWhiteSpace(receipt) ? null : receipt.Trim(), today)))
            : Result<Happening>.Bad(
                new Fault("How much", $"\"{amount}\" is not an amount", TypedNumber.Mend(amount, "Write it as 42.50.")));

    private static string Says(JobSum job) => job.Job is null
        ? $"spent {Money(job.Spent)}{Owed(job.Owed)}; worked {job.Worked}"
        : $"{(job.IsDone ? "done; " : job.IsChosen ? "" : "not chosen; ")}spent {Money(job.Spent)} of {Money(job.PlannedMoney)} planned{Owed(job.Owed)}; worked {job.Worked} of {job.PlannedWork}";

    private static string Says(MoneyLine line) =>
        $"{(line.Spent < 0 ? $"{Money(-line.Spent)} came back" : line.Spent > 0 ? Money(line.Spent) : "")}{(line.Owed > 0 ? $"{(line.Spent != 0 ? ", " : "")}{Money(line.Owed)} owed" : "")}{(line.IsPriceKnown ? "" : "no price")}{(line.Attachment is null ? "" : $"; receipt: {line.Attachment}")}";

    private static string Owed(decimal owed) => owed > 0 ? $", {Money(owed)} owed" : "";

    private static string Money(decimal amount) => amount.ToString("0.00", CultureInfo.InvariantCulture);

    private static string Taught(OverrunBelief belief, string what) => belief.Tasks == 0
        ? $"no {what} yet to learn from, {belief.MiddleFactor:0.00} × the plan as a middle, held very loosely (common practice, no source)."
        : $"from {belief.Tasks} {what}{(belief.Tasks == 1 ? "" : "s")}, half take {belief.MiddleFactor:0.00} × the plan or less.";
}
