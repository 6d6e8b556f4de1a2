using Refettle.Logbook;

namespace Refettle.Kits;

/// <summary>Describes one side of a car after the other.</summary>
public static class Mirror
{
    /// <summary>What describing the opposite side or corner like <paramref name="from"/> brings. What is
    /// described there already stays as it is.</summary>
    /// <param name="from">A side takes its corners along.</param>
    public static Result<StructureAdded> Propose(Structure car, Spot from)
    {
        var place = $"mirror {from.Code()}".TrimEnd();
        if (from == Spot.None)
            return Result<StructureAdded>.Bad(new Fault(place, "no side is given", "Give left, right, fl, fr, rl or rr."));
        var picked = new MirrorPick(car, from);
        if (picked.Things == Structure.Empty)
            return Result<StructureAdded>.Bad(
                new Fault(place, $"nothing on the car lies {from.Words().ToLowerInvariant()} that the other side lacks",
                "Give parts a side, or identifiers that begin with one, like rl-hub."));
        var mirrored = picked.Mirrored();
        var ties = Tying.Propose(car.LooseEnds, mirrored, new Dictionary<string, string>());
        return Trial.Of(car, Tying.Carry(car, place, mirrored, ties));
    }
}
