using Refettle.Access;

namespace Refettle.Timeline.Network;

/// <summary>What of a car becomes waste, by what the plan drains, takes off and destroys, cleans and coats.</summary>
/// <param name="steps">Everything that is or will be undone.</param>
internal sealed class WasteOf(NetworkDraft draft, CarStanding standing, IReadOnlyList<Step> steps)
{
    private const string Drained = "-drained";

    private readonly List<Part> _off = steps.Where(step => step.Fact.Kind == FactKind.Off).SelectMany(step => PartsOf(standing, step.Fact.Subject))
        .Concat(steps.SelectMany(step => step.Destroys).Select(name => standing.Parts[name])).DistinctBy(part => part.Id).ToList();

    /// <summary>Each kind once; other fluids one by one.</summary>
    public ValueList<Waste> All()
    {
        List<Waste> all = [.. Fluids(), .. Dusts(), .. Coats(), .. Things()];
        if (all.Exists(one => one.Kind is WasteKind.Fuel or WasteKind.BrakeFluid or WasteKind.OtherFluid or WasteKind.Paint or WasteKind.Solvent))
            all.Add(WasteRules.Of(WasteKind.Rags, "Oily and solvent-wet rags", []));
        return all.OrderBy(one => one.Kind).ToValueList();
    }

    /// <summary>The tasks after which it is there.</summary>
    public IEnumerable<string> Tasks() => draft.Tasks.Where(task => task.Kind == TaskKind.Coat || IsDerusting(task)
        || (task.Kind is TaskKind.Strip or TaskKind.Try && task.Steps.Any(IsSource))).Select(task => task.Id).ToList();

    private bool IsSource(Step step) => KindOf(step) is not null || IsHydraulic(step) || step.Destroys.Any(name => IsLeft(standing.Parts[name]))
        || (step.Fact.Kind == FactKind.Open && standing.Joints[step.Fact.Subject].Holds.Any(name => IsSuspect(standing.Parts[name])))
        || (step.Fact.Kind == FactKind.Off && PartsOf(standing, step.Fact.Subject).Any(IsLeft));

    private bool IsLeft(Part part) => IsSuspect(part) || (IsGone(part) && ThingOf(part) is not null);

    private IEnumerable<Waste> Fluids()
    {
        foreach (var group in steps.Where(step => KindOf(step) is not null).Select(step => (Kind: KindOf(step)!.Value, Says: NameOf(step))).Distinct().GroupBy(fluid => fluid.Says))
            yield return WasteRules.Of(group.First().Kind, group.Key, []);
        if (steps.Any(IsHydraulic) && steps.All(step => KindOf(step) != WasteKind.BrakeFluid))
            yield return WasteRules.Of(WasteKind.BrakeFluid, "Brake fluid", steps.Where(IsHydraulic).Select(step => Access.Wording.NameOf(step.Fact, standing)));
    }

    private IEnumerable<Waste> Dusts()
    {
        if (_off.Where(IsSuspect).ToList() is { Count: > 0 } suspect)
            yield return WasteRules.Of(WasteKind.SuspectedAsbestos, "Old linings, gaskets and their dust", suspect.Select(part => part.Name));
        if (draft.Tasks.Where(IsDerusting).ToList() is { Count: > 0 } bare)
            yield return WasteRules.Of(WasteKind.Dust, "Blasting and sanding dust", bare.Select(task => standing.Parts[task.Id["derust.".Length..]].Name));
    }

    private IEnumerable<Waste> Coats()
    {
        var coats = draft.Tasks.Where(task => task.Kind == TaskKind.Coat).Select(task => task.Coat).OfType<string>().ToList();
        if (coats.Count > 0)
            yield return WasteRules.Of(WasteKind.Paint, "Remains of paint and hardener", coats);
        if (coats.Count > 0 || draft.Tasks.Any(IsDerusting))
            yield return WasteRules.Of(WasteKind.Solvent, "Used thinner and degreaser", []);
    }

    private IEnumerable<Waste> Things() => _off.Where(IsGone).Select(part => (Part: part, Kind: ThingOf(part))).Where(thing => thing.Kind is not null).GroupBy(thing => thing.Kind!.Value)
        .Select(group => WasteRules.Of(group.Key, group.Key switch { WasteKind.Battery => "Old battery", WasteKind.Airbag => "Airbags and belt tensioners", _ => "Old tyres" }, group.Select(thing => thing.Part.Name)));

    /// <summary>By the states' names, as their cautions are found; refrigerant also by the lines that are opened.</summary>
    private WasteKind? KindOf(Step step) => step.Fact.Kind switch
    {
        FactKind.State => KindOf(standing.States[step.Fact.Subject]),
        FactKind.Open when standing.Joints[step.Fact.Subject] is { Kind: JointKind.Pipe or JointKind.Hose } line && line.Holds.Any(part => standing.Parts[part].Hazards.Contains(Hazard.Refrigerant)) => WasteKind.Refrigerant,
        _ => null,
    };

    private static WasteKind? KindOf(State state) => $"{state.Id} {state.Name}" switch
    {
        var words when words.Contains("refrigerant", StringComparison.OrdinalIgnoreCase) => WasteKind.Refrigerant,
        _ when !state.Id.EndsWith(Drained, StringComparison.Ordinal) => null,
        var words when words.Contains("fuel", StringComparison.OrdinalIgnoreCase) => WasteKind.Fuel,
        var words when words.Contains("brake", StringComparison.OrdinalIgnoreCase) => WasteKind.BrakeFluid,
        var words when words.Contains("coolant", StringComparison.OrdinalIgnoreCase) => WasteKind.Coolant,
        _ => WasteKind.OtherFluid,
    };

    private string NameOf(Step step) => KindOf(step) switch
    {
        WasteKind.Refrigerant => "Refrigerant",
        WasteKind.BrakeFluid => "Brake fluid",
        _ when step.Fact.Subject[..^Drained.Length].Replace('-', ' ') is var name => $"{char.ToUpperInvariant(name[0])}{name[1..]}",
        _ => step.Fact.Subject,
    };

    private bool IsHydraulic(Step step) => step.Fact.Kind == FactKind.Open && EndChecks.IsHydraulic(standing.Joints[step.Fact.Subject], standing);

    private static bool IsDerusting(WorkTask task) => task.Id.StartsWith("derust.", StringComparison.Ordinal);

    private static bool IsSuspect(Part part) => part.Hazards.Contains(Hazard.FrictionDust) || part.Id.Contains("gasket", StringComparison.OrdinalIgnoreCase) || part.Name.Contains("gasket", StringComparison.OrdinalIgnoreCase);

    private bool IsGone(Part part) => steps.Any(step => step.Destroys.Contains(part.Id)) || standing.Car.Verdicts.Any(verdict => verdict.Part == part.Id && verdict.Kind is VerdictKind.Replace or VerdictKind.Substitute);

    private static WasteKind? ThingOf(Part part) => part.Hazards.Contains(Hazard.BatteryAcid) ? WasteKind.Battery
        : part.Hazards.Contains(Hazard.Airbag) ? WasteKind.Airbag
        : part.Roles.Contains("wheel") || part.Id.Contains("tyre", StringComparison.OrdinalIgnoreCase) ? WasteKind.Tyre : null;

    private static IEnumerable<Part> PartsOf(CarStanding standing, string name) => standing.Parts.TryGetValue(name, out var part) ? [part]
        : standing.SubAssemblies[name].Members.Select(member => standing.Parts[member]);
}
