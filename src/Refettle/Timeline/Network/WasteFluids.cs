using Refettle.Access;

namespace Refettle.Timeline.Network;

/// <summary>Fluids that come off a car: what states drain, and what is still in the parts that come off
/// and the lines that are opened.</summary>
internal sealed class WasteFluids(CarStanding standing, IReadOnlyList<Undone> all)
{
    private const string Drained = "-drained";

    private static readonly Hazard[] _fluids = [Hazard.Refrigerant, Hazard.Fuel, Hazard.BrakeFluid, Hazard.HotCoolant, Hazard.Oil];

    /// <param name="From">Where it comes from; null where its name says so.</param>
    private sealed record Fluid(Hazard What, string Says, string? From = null);

    /// <summary>Whether a hazard is a fluid that is caught.</summary>
    public static bool IsFluid(Hazard hazard) => _fluids.Contains(hazard);

    public IEnumerable<Waste> All()
    {
        var drained = all.Where(one => one.Fact.Kind == FactKind.State)
            .SelectMany(one => DrainedBy(standing.States[one.Fact.Subject]).Select(fluid => (Fluid: fluid, IsHere: !one.IsHandedIn)))
            .ToList();
        var left = _fluids.SelectMany(fluid => LeftOf(fluid, drained.Exists(one => one.Fluid.What == fluid)));
        return drained.Where(one => one.IsHere).Select(one => one.Fluid).Concat(left).GroupBy(fluid => (fluid.What, fluid.Says))
            .Select(same => WasteRules.Of(KindOf(same.Key.What), same.Key.Says, same.Select(one => one.From).OfType<string>()));
    }

    /// <summary>Whether a fluid comes out with it.</summary>
    public bool IsSource(Fact fact) =>
        fact.Kind == FactKind.State ? DrainedBy(standing.States[fact.Subject]).Any() : Touched(fact).Any(part => part.Hazards.Any(IsFluid));

    /// <summary>Of what one state drains as a whole nothing is named twice. Oil is many: of it that in parts which no
    /// state of this car drains first.</summary>
    private IEnumerable<Fluid> LeftOf(Hazard fluid, bool isDrained) => isDrained && fluid != Hazard.Oil ? []
        : all.Where(one => !one.IsHandedIn).SelectMany(one => Touched(one.Fact))
            .Where(part => part.Hazards.Contains(fluid) && !(fluid == Hazard.Oil && HasDrain(part, fluid))).DistinctBy(part => part.Id)
            .Select(part => new Fluid(fluid, NameOf(fluid), part.Name));

    private bool HasDrain(Part part, Hazard fluid) =>
        part.Out.Clear.Concat(standing.JointsOf(part.Id).SelectMany(joint => joint.Ways).SelectMany(way => way.Clear))
        .Any(fact => fact.Kind == FactKind.State && DrainedBy(standing.States[fact.Subject]).Any(one => one.What == fluid));

    /// <summary>What comes off, or is held by a line that is opened.</summary>
    private IEnumerable<Part> Touched(Fact undone) => undone.Kind switch
    {
        FactKind.Off => PartsOf(standing, undone.Subject),
        FactKind.Open when standing.Joints[undone.Subject] is { Kind: JointKind.Pipe or JointKind.Hose } line =>
            line.Holds.Select(name => standing.Parts[name]),
        _ => [],
    };

    public static IEnumerable<Part> PartsOf(CarStanding standing, string name) => standing.Parts.TryGetValue(name, out var part) ? [part]
        : standing.SubAssemblies[name].Members.Select(member => standing.Parts[member]);

    /// <summary>As the description says; else by the state's name, and then that is told.</summary>
    private static IEnumerable<Fluid> DrainedBy(State state) =>
        state.Drains.Count > 0 ? state.Drains.Where(IsFluid).Select(fluid => Named(fluid, state))
        : ByName(state) is { } fluid ? [Named(fluid, state) with { From = $"{state.Name}, by its name" }] : [];

    private static Hazard? ByName(State state) => $"{state.Id} {state.Name}" switch
    {
        var words when Has(words, "refrigerant") => Hazard.Refrigerant,
        _ when !state.Id.EndsWith(Drained, StringComparison.Ordinal) => null,
        var words when Has(words, "fuel") => Hazard.Fuel,
        var words when Has(words, "brake") => Hazard.BrakeFluid,
        var words when Has(words, "coolant") => Hazard.HotCoolant,
        _ => Hazard.Oil,
    };

    /// <summary>Oils are told apart by what they are drained from: gearbox oil, steering oil.</summary>
    private static Fluid Named(Hazard fluid, State state)
    {
        if (fluid != Hazard.Oil)
            return new(fluid, NameOf(fluid));
        if (!state.Id.EndsWith(Drained, StringComparison.Ordinal))
            return new(fluid, NameOf(fluid), state.Name);
        var name = state.Id[..^Drained.Length].Replace('-', ' ');
        return new(fluid, $"{char.ToUpperInvariant(name[0])}{name[1..]}{(Has(name, "oil") || Has(name, "fluid") ? "" : " oil")}");
    }

    private static string NameOf(Hazard fluid) => fluid switch
    {
        Hazard.Refrigerant => "Refrigerant",
        Hazard.Fuel => "Fuel",
        Hazard.BrakeFluid => "Brake fluid",
        Hazard.HotCoolant => "Coolant",
        _ => "Oil",
    };

    private static WasteKind KindOf(Hazard fluid) => fluid switch
    {
        Hazard.Refrigerant => WasteKind.Refrigerant,
        Hazard.Fuel => WasteKind.Fuel,
        Hazard.BrakeFluid => WasteKind.BrakeFluid,
        Hazard.HotCoolant => WasteKind.Coolant,
        _ => WasteKind.OtherFluid,
    };

    private static bool Has(string words, string word) => words.Contains(word, StringComparison.OrdinalIgnoreCase);
}
