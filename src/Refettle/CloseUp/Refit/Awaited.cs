using Refettle.Access;
using Refettle.Logbook;
using Refettle.Stock;
using Refettle.Stock.Baskets;

namespace Refettle.CloseUp.Refit;

/// <summary>Something that goes onto the car and is not here: at an outside shop, on order, or not ordered yet.</summary>
/// <param name="Thing"><c>part x</c> or <c>joint x</c>; null for what left by words only and belongs to no step.</param>
/// <param name="Step">The first step of the sheet that needs it, from 0; null when none does.</param>
public sealed record Awaited(string? Thing, string Name, int? Step, string Says);

/// <summary>What of a refit is not here.</summary>
public static class AwaitedParts
{
    private static readonly Plan _nothing = new() { Question = new() { Goals = [] }, Status = PlanStatus.Optimal };

    /// <summary>In the order of the steps, what belongs to none last.</summary>
    /// <param name="histories">Of all cars, this one among them: they share the shelf.</param>
    /// <param name="fasteners">Those of the sheet.</param>
    public static ValueList<Awaited> Of(Car car, RefitSheet sheet, ValueList<StepFasteners> fasteners, IReadOnlyCollection<CarHistory> histories, DateOnly today)
    {
        var shelf = ShelfFold.Of(histories);
        var away = ShelfParts.Away(shelf, car, today).Select(one => new Awaited($"part {one.Part}", one.Name, StepOf(car, sheet, one.Part), one.Work.Says)).ToList();
        return away.Concat(ByWords(shelf, car)).Concat(Bought(car, sheet, shelf, histories, today).Where(one => away.TrueForAll(gone => gone.Thing != one.Thing)))
            .Concat(fasteners.Where(one => one.ToCome + one.Missing > 0).Select(one => new Awaited($"joint {one.Joint}", NameOf(car, one.Joint), one.Step, one.Says)))
            .OrderBy(one => one.Step ?? int.MaxValue).ToValueList();
    }

    /// <summary>Parts of the car that are not here and go onto it, by identifier.</summary>
    /// <param name="histories">Of all cars, this one among them.</param>
    public static ValueList<string> Absent(Car car, IReadOnlyCollection<CarHistory> histories, DateOnly today)
    {
        var shelf = ShelfFold.Of(histories);
        return ShelfParts.Away(shelf, car, today).Select(one => one.Part).Concat(NotInHand(car, shelf, histories, today).Select(line => line.Need.Thing["part ".Length..])).Distinct().Order(StringComparer.Ordinal).ToValueList();
    }

    /// <summary>What left for a shop and is no part of the description.</summary>
    private static IEnumerable<Awaited> ByWords(Shelf shelf, Car car) =>
        from work in shelf.Outside
        where work.Car == car.Id
        from line in work.Lines
        where line.Away > 0 && car.Structure.Parts.All(part => $"part {part.Id}" != line.Item.What)
        select new Awaited(null, line.Item.What, null, $"At {work.To}: {line.Away} × {line.Item.What}, {work.Work}{(work.Promised is { } day ? $"; promised {DayWords.Day(day)}" : "; no day promised")}");

    /// <summary>New parts for places that a step fits again: what is not in hand of them.</summary>
    private static IEnumerable<Awaited> Bought(Car car, RefitSheet sheet, Shelf shelf, IReadOnlyCollection<CarHistory> histories, DateOnly today) => NotInHand(car, shelf, histories, today)
        .Select(line => new Awaited(line.Need.Thing, line.Need.What, StepOf(car, sheet, line.Need.Thing["part ".Length..]), Says(shelf, line))).Where(one => one.Step is not null);

    private static IEnumerable<Served> NotInHand(Car car, Shelf shelf, IReadOnlyCollection<CarHistory> histories, DateOnly today)
    {
        var needs = histories.SelectMany(history => PlanNeeds.Of(history, shelf, _nothing, [], null)).ToValueList();
        return Allocation.Of(shelf, needs, Supplies.Of(shelf, needs, today, Basket.UsualConfidence))
            .Where(line => line.Need.Car == car.Id && line.Need.Thing.StartsWith("part ", StringComparison.Ordinal) && (line.Missing > 0 || line.Given.Any(given => given.Supply.Order is not null)));
    }

    private static string Says(Shelf shelf, Served line)
    {
        var coming = line.Given.Where(given => given.Supply.Order is not null).ToList();
        var from = string.Join(", ", coming.Select(given => shelf.Orders.First(order => order.Id == given.Supply.Order).Supplier).Distinct());
        return $"New: {line.Need.Count} × {line.Need.Number ?? line.Need.What}: " + string.Join(", ", new[]
        {
            coming.Count > 0 ? $"{coming.Sum(given => given.Count)} ordered from {from}, to come about {DayWords.Day(coming.Max(given => given.Supply.From))}" : null,
            line.Missing > 0 ? $"{line.Missing} not ordered yet" : null,
        }.OfType<string>());
    }

    /// <summary>The step that fits it, alone or with what it belongs to.</summary>
    private static int? StepOf(Car car, RefitSheet sheet, string part)
    {
        var fits = car.Structure.SubAssemblies.Where(unit => unit.Members.Contains(part)).Select(unit => unit.Id).Append(part).Select(Fact.Off).ToHashSet();
        return sheet.Steps.Select((step, place) => (step, place)).Where(one => fits.Contains(one.step.Fact)).Select(one => (int?)one.place).FirstOrDefault();
    }

    private static string NameOf(Car car, string joint) => car.Structure.Joints.FirstOrDefault(one => one.Id == joint)?.Name ?? joint;
}
