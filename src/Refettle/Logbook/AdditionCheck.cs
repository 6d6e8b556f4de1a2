using Refettle.Checks;

namespace Refettle.Logbook;

/// <summary>Whether a structure may be added to a car: the faults that the car would have then and does not have now, and
/// notes on what it would have twice.</summary>
internal static class AdditionCheck
{
    public static IEnumerable<Fault> Of(Structure car, StructureAdded added) =>
        Twice(added.Added).Concat(Missing(car, added.Tied)).Concat(StructureCheck.Of(With(car, added)).Except(StructureCheck.Of(car)))
            .Concat(Doubles.Of(car, added.Added));

    private static Structure With(Structure car, StructureAdded added)
    {
        var structure = new StructureBuilder();
        structure.Add(car, []);
        structure.Add(added.Added, added.Tied);
        return structure.All();
    }

    /// <summary>Within one addition the second would silently replace the first.</summary>
    private static IEnumerable<Fault> Twice(Structure added) =>
        Pruning.Named(added).CountBy(thing => thing).Where(named => named.Value > 1)
            .Select(named => new Fault(named.Key.ToString(), "it is described more than once", "Give each its own identifier."));

    private static IEnumerable<Fault> Missing(Structure car, ValueList<string> tied)
    {
        var known = car.LooseEnds.Select(end => $"{end.Kit}/{end.Hole}").ToHashSet();
        return tied.Where(end => !known.Contains(end)).Select(end => new Fault(
            $"loose end {end}", "the car has no such loose end", NearNames.Ask(end, known, "Leave it out.")));
    }
}
