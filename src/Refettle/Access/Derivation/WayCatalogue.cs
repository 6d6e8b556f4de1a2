using Refettle.Access.Fire;

namespace Refettle.Access.Derivation;

/// <summary>Lists the ways of any fact of a car: the access model, fact by fact.</summary>
/// <remarks>A way with flame, sparks or cutting needs all that burns near it away, whatever its sheet says, and
/// is none where that can never be.</remarks>
/// <param name="standing">The car.</param>
/// <param name="without">Parts that may not be touched.</param>
/// <param name="isGated">False for what was done already: how is not judged any more.</param>
/// <param name="last">The stance that the car is to be in at the end: what carries it there stays
/// on. Null where it does not matter.</param>
internal sealed class WayCatalogue(CarStanding standing, ValueList<string> without, bool isGated = true, string? last = null)
{
    private readonly HashSet<string> _stays = last is null ? [] : [.. standing.Carriers(standing.States[last])];

    private readonly HashSet<string> _without = [.. without];

    private readonly HashSet<string> _lifted = [.. standing.Car.Settings.Lifted];

    /// <summary>All ways of a fact, forbidden ones too (<see cref="WaySource.Forbidden"/>).</summary>
    public IEnumerable<WaySource> Of(Fact fact) => fact.Kind switch
    {
        FactKind.Off when standing.Parts.TryGetValue(fact.Subject, out var part) => OfPart(part),
        FactKind.Off when standing.SubAssemblies.TryGetValue(fact.Subject, out var unit) => OfUnit(unit),
        FactKind.Free => [OfFree(standing.Parts[fact.Subject])],
        FactKind.Open => OfJoint(standing.Joints[fact.Subject]),
        FactKind.State => OfState(standing.States[fact.Subject]),
        FactKind.Reach => [OfSpace(standing.Spaces[fact.Subject])],
        _ => [],
    };

    private IEnumerable<WaySource> OfPart(Part part)
    {
        if (part.Fixed || _stays.Contains(part.Id))
            yield break;
        var fact = Fact.Off(part.Id);
        var forbidden = Touching([part.Id]).ToList();
        var opens = standing.JointsOf(part.Id).Select(joint => Fact.Open(joint.Id));
        if (FireOf(HotWork.OfTool(part.Out.Tool), [part.Id]) is { } fire)
        {
            yield return new(fact, "alone", Pricing.Of(part.Out), Needs([.. opens, .. part.Out.Clear, .. fire]), null)
            {
                Stance = Stance(part.Out.Clear),
                Forbidden = forbidden,
                Uniques = Uniques([part.Id]),
            };
        }

        foreach (var unit in standing.SubAssembliesOf(part.Id))
        {
            yield return new(fact, $"with {unit.Id}", Cost.Nothing, Needs([Fact.Off(unit.Id)]), null) { Forbidden = forbidden };
        }
    }

    private IEnumerable<WaySource> OfUnit(SubAssembly unit)
    {
        if (unit.Members.Any(part => standing.Parts[part].Fixed || _stays.Contains(part))
            || FireOf(HotWork.OfTool(unit.Out.Tool), unit.Members) is not { } fire)
            yield break;
        var opens = standing.OuterJointsOf(unit).Select(joint => Fact.Open(joint.Id));
        yield return new(
            Fact.Off(unit.Id), "", Pricing.Of(unit.Out), Needs([.. opens, .. unit.Out.Clear, .. fire]), null)
        {
            Stance = Stance(unit.Out.Clear),
            Forbidden = [.. Touching(unit.Members)],
            Uniques = Uniques(unit.Members),
        };
    }

    private WaySource OfFree(Part part) =>
        new(Fact.Free(part.Id), "", Cost.Nothing,
            Needs(standing.JointsOf(part.Id).Select(joint => Fact.Open(joint.Id)).Prepend(Fact.Off(part.Id))), null);

    private WaySource OfSpace(Space space) =>
        new(Fact.Reach(space.Id), "", Cost.Nothing, Needs(space.ClosedBy.Select(Fact.Off)), null);

    private IEnumerable<WaySource> OfJoint(Joint joint)
    {
        var touched = Touching(joint.Holds).ToList();
        foreach (var way in joint.Ways)
        {
            if (IsOnNothing(way.Clear) || FireOf(HotWork.Of(way, joint), joint.Holds, way.Where == WorkPlace.OnBench) is not { } fire)
                continue;
            var clear = way.Where == WorkPlace.OnBench ? way.Clear.Concat(joint.Holds.Select(Fact.Off)) : way.Clear;
            yield return new(Fact.Open(joint.Id), way.Id, Pricing.Of(way, standing, joint.Refit), Needs(clear.Concat(fire)), way)
            {
                Stance = Stance(way.Clear),
                Forbidden = [.. touched, .. Destroying(way)],
            };
        }
    }

    private IEnumerable<WaySource> OfState(State state)
    {
        if (state.IsStance && !standing.CanCarry(state))
            yield break;
        foreach (var way in state.Ways)
        {
            if (IsOnNothing(state.IsStance ? [.. way.Clear, Fact.State(state.Id)] : way.Clear)
                || FireOf(HotWork.Of(way, joint: null), []) is not { } fire)
                continue;
            yield return new(Fact.State(state.Id), way.Id, Pricing.Of(way, standing), Needs(way.Clear.Concat(fire)), way)
            {
                Stance = state.IsStance ? null : Stance(way.Clear),
                Forbidden = [.. Destroying(way)],
            };
        }
    }

    /// <summary>Whether two stances are asked for at a time, or one without what carries the car in it.</summary>
    private bool IsOnNothing(IReadOnlyCollection<Fact> clear)
    {
        var stances = clear.Where(standing.IsStance).Distinct().ToList();
        return isGated
            && (stances.Count > 1
                || stances.Exists(stance => clear.Any(fact => standing.TakesOffCarrier(fact, standing.States[stance.Subject]))));
    }

    private IReadOnlyList<Fact>? FireOf(Danger danger, ValueList<string> held, bool onBench = false) =>
        isGated ? FireNeeds.Of(standing, danger, held, onBench) : [];

    private Fact[] Needs(IEnumerable<Fact> facts) => [.. facts.Distinct().Where(fact => !standing.IsTrue(fact))];

    private string? Stance(ValueList<Fact> clear)
    {
        foreach (var fact in clear)
        {
            if (standing.IsStance(fact))
                return fact.Subject;
        }

        return null;
    }

    private string[] Uniques(IEnumerable<string> parts) =>
        [.. parts.Where(part => standing.Parts[part].Scarcity == Scarcity.Unique && !standing.IsTrue(Fact.Off(part)))];

    private IEnumerable<string> Touching(IEnumerable<string> parts) =>
        parts.Distinct().Where(_without.Contains).Select(part => $"touching {standing.Parts[part].Name}");

    private IEnumerable<string> Destroying(Way way) =>
        way.Destroys.Distinct().Where(MustLast).Select(part => $"destroying {standing.Parts[part].Name}");

    private bool MustLast(string part) =>
        _without.Contains(part) || (standing.Parts[part].Scarcity == Scarcity.Unique && !_lifted.Contains(part));
}
