using Refettle.Access;
using Refettle.Logbook;
using Refettle.Stock;
using Refettle.Stock.Baskets;
using Refettle.Timeline.Network;

namespace Refettle.CloseUp.Refit;

/// <summary>Something that goes onto the car and is not here: at an outside shop, on order, or not ordered yet.</summary>
/// <param name="Thing"><c>part x</c> or <c>joint x</c>; null for what left by words only and belongs to no step.</param>
/// <param name="Step">The first step of the sheet that needs it, from 0; null when none does.</param>
public sealed record Awaited(string? Thing, string Name, int? Step, string Says);

/// <summary>What of a refit is not here.</summary>
public sealed class AwaitedParts
{
    private readonly Car _car;
    private readonly Shelf _shelf;
    private readonly ValueList<AwayPart> _away;
    private readonly ValueList<Served> _notInHand;

    /// <param name="histories">Of all cars, this one among them: they share the shelf.</param>
    public AwaitedParts(Car car, IReadOnlyCollection<CarHistory> histories, DateOnly today)
    {
        (_car, _shelf) = (car, ShelfFold.Of(histories));
        _away = ShelfParts.Away(_shelf, car, today);
        _notInHand = NotInHand(car, _shelf, histories, today).ToValueList();
    }

    /// <summary>Parts of the car that are not here and go onto it, by identifier.</summary>
    public ValueList<string> Absent =>
        _away.Select(one => one.Part).Concat(_notInHand.Select(PartOf)).Distinct().Order(StringComparer.Ordinal).ToValueList();

    /// <summary>In the order of the steps, what belongs to none last.</summary>
    /// <param name="fasteners">Those of the sheet.</param>
    public ValueList<Awaited> Of(RefitSheet sheet, ValueList<StepFasteners> fasteners)
    {
        var away = _away.Select(one => new Awaited($"part {one.Part}", one.Name, StepOf(sheet, one.Part), one.Work.Says)).ToList();
        return away.Concat(ByWords()).Concat(Bought(sheet).Where(one => away.TrueForAll(gone => gone.Thing != one.Thing)))
            .Concat(fasteners.Where(one => one.ToCome + one.Missing > 0)
                .Select(one => new Awaited($"joint {one.Joint}", NameOf(one.Joint), one.Step, one.Says)))
            .OrderBy(one => one.Step ?? int.MaxValue).ToValueList();
    }

    /// <summary>What left for a shop and is no part of the description.</summary>
    private IEnumerable<Awaited> ByWords() =>
        from work in _shelf.Outside
        where work.Car == _car.Id
        from line in work.Lines
        where line.Away > 0 && _car.Structure.Parts.All(part => $"part {part.Id}" != line.Item.What)
        select new Awaited(null, line.Item.What, null,
            $"At {work.To}: {line.Away} × {line.Item.What}, {work.Work}{(work.Promised is { } day ? $"; promised {DayWords.Day(day)}" : "; no day promised")}");

    /// <summary>New parts for places that a step fits again: what is not in hand of them.</summary>
    private IEnumerable<Awaited> Bought(RefitSheet sheet) => _notInHand
        .Select(line => new Awaited(line.Need.Thing, line.Need.What, StepOf(sheet, PartOf(line)), Says(line)))
        .Where(one => one.Step is not null);

    private static IEnumerable<Served> NotInHand(Car car, Shelf shelf, IReadOnlyCollection<CarHistory> histories, DateOnly today)
    {
        var needs = histories.SelectMany(history => PlanNeeds.Of(history, shelf, Plan.Nothing, [], null)).ToValueList();
        return Allocation.Of(shelf, needs, Supplies.Of(shelf, needs, today, Basket.UsualConfidence))
            .Where(line => line.Need.Car == car.Id && line.Need.Thing.StartsWith("part ", StringComparison.Ordinal)
                && (line.Missing > 0 || line.Given.Any(given => given.Supply.Order is not null)));
    }

    private static string PartOf(Served line) => line.Need.Thing["part ".Length..];

    private string Says(Served line)
    {
        var coming = line.Given.Where(given => given.Supply.Order is not null).ToList();
        var from = string.Join(", ",
            coming.Select(given => _shelf.Orders.First(order => order.Id == given.Supply.Order).Supplier).Distinct());
        return $"New: {line.Need.Count} × {line.Need.Number ?? line.Need.What}: " + string.Join(", ", new[]
        {
            coming.Count > 0
                ? $"{coming.Sum(given => given.Count)} ordered from {from}, to come about {DayWords.Day(coming.Max(given => given.Supply.From))}"
                : null,
            line.Missing > 0 ? $"{line.Missing} not ordered yet" : null,
        }.OfType<string>());
    }

    /// <summary>The step that fits it, alone or with what it belongs to.</summary>
    private int? StepOf(RefitSheet sheet, string part)
    {
        var fits = _car.Structure.SubAssemblies.Where(unit => unit.Members.Contains(part)).Select(unit => unit.Id).Append(part)
            .Select(Fact.Off).ToHashSet();
        return sheet.Steps.Select((step, place) => (step, place)).Where(one => fits.Contains(one.step.Fact)).Select(one => (int?)one.place)
            .FirstOrDefault();
    }

    private string NameOf(string joint) => _car.Structure.Joints.FirstOrDefault(one => one.Id == joint)?.Name ?? joint;
}
