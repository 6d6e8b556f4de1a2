using Refettle.Access;
using Refettle.Logbook;
using Refettle.Stock;
using Refettle.Stock.Baskets;

namespace Refettle.CloseUp.Refit;

/// <summary>The new fasteners that a step of the sheet takes, and where they are.</summary>
/// <param name="Step">Its place in the sheet, from 0.</param>
/// <param name="Kept">Of those in hand, kept for this joint by an entry.</param>
/// <param name="Free">Of those in hand, kept for nothing, loose and of this very number.</param>
/// <param name="From">The day on which the last of those to come is counted on; null when none are to come.</param>
public sealed record StepFasteners(
    int Step, string Joint, string? Number, int Count, int InHand, int Kept, int Free, int ToCome, DateOnly? From, int Missing)
{
    public string Says => Number is null ? $"New: {Count}; without a part number the shelf cannot tell what is there"
        : $"New: {Count} × {Number}: {string.Join(", ", new[] { Shelf(), ToCome > 0 ? $"{ToCome} ordered, to come about {From:yyyy-MM-dd}" : null, Missing > 0 ? $"{Missing} missing" : null }.OfType<string>())}";

    /// <summary>The entry that keeps what is in hand and free for this joint; null when there is nothing to keep.</summary>
    public Reserved? Keeps => Number is { } number && Free > 0 ? new($"joint {Joint}", number, Free) : null;

    private string? Shelf() =>
        InHand == 0
            ? null
            : Kept == InHand
            ? $"{InHand} in hand, kept for it"
            : Kept > 0
            ? $"{InHand} in hand, {Kept} of them kept for it"
            : $"{InHand} in hand";
}

/// <summary>Serves the single-use fasteners of a refit from the one shelf.</summary>
public static class RefitFasteners
{
    /// <summary>What is apart on all cars is served together, so that no piece is counted twice; what a plan has still to open
    /// waits for its turn in the basket.</summary>
    /// <param name="histories">Of all cars, this one among them.</param>
    /// <returns>Of every step whose joint takes new fasteners, in the order of the sheet.</returns>
    public static ValueList<StepFasteners> Of(Car car, RefitSheet sheet, IReadOnlyCollection<CarHistory> histories, DateOnly today)
    {
        var shelf = ShelfFold.Of(histories);
        var needs = histories.SelectMany(history => PlanNeeds.Of(history, shelf, Plan.Nothing, [], null)).ToValueList();
        var served = Allocation.Of(shelf, needs, Supplies.Of(shelf, needs, today, Basket.UsualConfidence))
            .Where(line => line.Need.Car == car.Id).ToLookup(line => line.Need.Thing);
        return sheet.Steps.Select((step, place) => (step, place)).Where(one => one.step.Card is { NewFasteners: > 0 })
            .SelectMany(one => served[$"joint {one.step.Fact.Subject}"].Select(line => Of(one.place, one.step.Fact.Subject, line)))
            .ToValueList();
    }

    private static StepFasteners Of(int step, string joint, Served line)
    {
        var (here, coming) = (line.Given.Where(given => given.Supply.Order is null).ToList(),
            line.Given.Where(given => given.Supply.Order is not null).ToList());
        return new(step, joint, line.Need.Number, line.Need.Count, here.Sum(given => given.Count),
            here.Where(given => given.Supply.For is not null).Sum(given => given.Count),
            here.Where(given => given.Supply is { For: null, Kit: null } && given.Supply.Number == line.Need.Number)
                .Sum(given => given.Count),
            coming.Sum(given => given.Count), coming.Count == 0 ? null : coming.Max(given => given.Supply.From), line.Missing);
    }
}
