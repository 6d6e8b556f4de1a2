using Refettle.Access;

namespace Refettle.Timeline.Network;

/// <summary>Something that was, is or will be undone.</summary>
/// <param name="Destroys">Parts, by identifier.</param>
/// <param name="IsHandedIn">What came of it was handed in.</param>
internal sealed record Undone(Fact Fact, ValueList<string> Destroys, bool IsHandedIn);

/// <summary>What of a car becomes waste, by what the plan drains, takes off and destroys, cleans and coats.</summary>
/// <param name="all">Everything that was, is or will be undone.</param>
internal sealed class WasteOf(NetworkDraft draft, CarStanding standing, IReadOnlyList<Undone> all)
{
    private const string ByItsName = ", by its name";

    private readonly WasteFluids _fluids = new(standing, all);

    private readonly List<Part> _off = all.Where(one => one.Fact.Kind == FactKind.Off && !one.IsHandedIn)
        .SelectMany(one => WasteFluids.PartsOf(standing, one.Fact.Subject))
        .Concat(all.Where(one => !one.IsHandedIn).SelectMany(one => one.Destroys).Select(name => standing.Parts[name]))
        .DistinctBy(part => part.Id).ToList();

    /// <summary>Each kind once; other fluids one by one.</summary>
    public ValueList<Waste> All()
    {
        List<Waste> found = [.. _fluids.All(), .. Dusts(), .. Coats(), .. Things()];
        if (found.Exists(
            one => one.Kind is WasteKind.Fuel or WasteKind.BrakeFluid or WasteKind.OtherFluid or WasteKind.Paint or WasteKind.Solvent))
            found.Add(WasteRules.Of(WasteKind.Rags, "Oily and solvent-wet rags", []));
        return found.OrderBy(one => one.Kind).ToValueList();
    }

    /// <summary>The tasks after which it is there.</summary>
    public IEnumerable<string> Tasks() => draft.Tasks.Where(task => task.Kind == TaskKind.Coat || task.Bares is not null
        || (task.Kind is TaskKind.Strip or TaskKind.Try
            && task.Steps.Any(step => IsSource(new(step.Fact, step.Destroys, IsHandedIn: false))))).Select(task => task.Id).ToList();

    /// <summary>Whether it makes waste.</summary>
    public bool IsSource(Undone one) => _fluids.IsSource(one.Fact) || one.Destroys.Any(name => IsLeft(standing.Parts[name]))
        || (one.Fact.Kind == FactKind.Open && standing.Joints[one.Fact.Subject].Holds.Any(name => IsSuspect(standing.Parts[name])))
        || (one.Fact.Kind == FactKind.Off && WasteFluids.PartsOf(standing, one.Fact.Subject).Any(IsLeft));

    private bool IsLeft(Part part) => IsSuspect(part) || (IsGone(part) && ThingOf(part) is not null);

    private IEnumerable<Waste> Dusts()
    {
        if (_off.Where(IsSuspect).ToList() is { Count: > 0 } suspect)
            yield return WasteRules.Of(WasteKind.SuspectedAsbestos, "Old linings, gaskets and their dust",
                suspect.Select(part => $"{part.Name}{(IsSaidSuspect(part) ? "" : ByItsName)}"));
        if (draft.Tasks.Select(task => task.Bares).OfType<string>().ToList() is { Count: > 0 } bare)
            yield return WasteRules.Of(WasteKind.Dust, "Blasting and sanding dust",
                bare.Select(part => standing.Parts[part].Name));
    }

    private IEnumerable<Waste> Coats()
    {
        var coats = draft.Tasks.Where(task => task.Kind == TaskKind.Coat).Select(task => task.Coat).OfType<string>()
            .Concat(PaintLeft.Of(standing.Car)).ToList();
        if (coats.Count > 0)
            yield return WasteRules.Of(WasteKind.Paint, "Remains of paint and hardener", coats);
        if (coats.Count > 0 || draft.Tasks.Any(task => task.Bares is not null))
            yield return WasteRules.Of(WasteKind.Solvent, "Used thinner and degreaser", []);
    }

    private IEnumerable<Waste> Things() =>
        _off.Where(IsGone).Select(part => (Part: part, Kind: ThingOf(part))).Where(thing => thing.Kind is not null)
            .GroupBy(thing => thing.Kind!.Value)
        .Select(group => WasteRules.Of(group.Key, NameOf(group.Key),
            group.Select(thing => $"{thing.Part.Name}{(group.Key == WasteKind.Tyre && !IsWheel(thing.Part) ? ByItsName : "")}")));

    private static string NameOf(WasteKind kind) => kind switch
    {
        WasteKind.Battery => "Old battery",
        WasteKind.Airbag => "Airbags and belt tensioners",
        WasteKind.Mercury => "Switches with mercury",
        _ => "Old tyres",
    };

    /// <summary>As the description says; else a gasket by its name.</summary>
    private static bool IsSuspect(Part part) => IsSaidSuspect(part) || IsCalled(part, "gasket");

    private static bool IsSaidSuspect(Part part) => part.Hazards.Any(hazard => hazard is Hazard.FrictionDust or Hazard.Asbestos);

    private bool IsGone(Part part) =>
        all.Any(one => one.Destroys.Contains(part.Id))
        || standing.Car.Verdicts.Any(verdict => verdict.Part == part.Id && verdict.Kind is VerdictKind.Replace or VerdictKind.Substitute);

    private static WasteKind? ThingOf(Part part) => part.Hazards.Contains(Hazard.BatteryAcid) ? WasteKind.Battery
        : part.Hazards.Contains(Hazard.Airbag) ? WasteKind.Airbag
        : part.Hazards.Contains(Hazard.Mercury) ? WasteKind.Mercury
        : IsWheel(part) || IsCalled(part, "tyre") ? WasteKind.Tyre : null;

    private static bool IsWheel(Part part) => part.Roles.Contains(Part.Wheel);

    private static bool IsCalled(Part part, string word) =>
        part.Id.Contains(word, StringComparison.OrdinalIgnoreCase) || part.Name.Contains(word, StringComparison.OrdinalIgnoreCase);
}
