using Refettle.Logbook;

namespace Refettle.Kits;

/// <summary>A hole of a kit and the part that fills it on this car.</summary>
/// <param name="Part">Null when it stays a loose end.</param>
/// <param name="Others">Further parts with the role, best first.</param>
public sealed record Joining(Hole Hole, string? Part, ValueList<string> Others);

/// <summary>An earlier kit's loose end and the new part that it is tied to.</summary>
public sealed record Tie(LooseEnd End, string Part);

/// <summary>What adding a kit to a car does. Nothing has happened yet: the entry goes into the logbook when the user agrees.</summary>
public sealed record KitAddition
{
    public required Kit Kit { get; init; }

    /// <summary>The kit with its prefix, by which its parts and loose ends are known: <c>drum-brake-corner rl</c>.</summary>
    public required string Instance { get; init; }

    public required ValueList<Joining> Joinings { get; init; }

    public required ValueList<Tie> Ties { get; init; }

    /// <summary>What the logbook records.</summary>
    public required StructureAdded Entry { get; init; }

    /// <summary>Loose ends that the kit leaves and that most cars have a counterpart for.</summary>
    public IEnumerable<LooseEnd> Reminders => Entry.Added.LooseEnds.Where(end => !end.IsOptional);

    /// <summary>Works out an addition. Everything but the kit, and a side where it has some, is proposed.</summary>
    /// <param name="car">The structure that it is added to.</param>
    /// <param name="prefix">Another prefix than the side's; a closing <c>-</c> is added.</param>
    /// <param name="choices">Parts by hole, or by <c>kit/hole</c> for loose ends of earlier kits; an empty text leaves it loose.</param>
    public static Result<KitAddition> Propose(Structure car, Kit kit, Spot spot = Spot.None, string? prefix = null,
        IReadOnlyDictionary<string, string>? choices = null) =>
        new KitFitting(car, kit, new(spot, prefix), choices ?? new Dictionary<string, string>()).Fit();
}
