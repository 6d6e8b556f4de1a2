using Refettle.Access.Ordering;

namespace Refettle.Access.Derivation;

/// <summary>Writes the steps of a plan from ordered ways: words, cautions, what to prop.</summary>
internal sealed class PlanBuilder(CarStanding standing)
{
    private readonly HashSet<string> _gone = [];
    private readonly HashSet<string> _opened = [];
    private readonly HashSet<string> _toLift = [];
    private readonly HashSet<string> _spared = [];
    private readonly HashSet<string> _stancesTaken = [];
    private readonly HashSet<string> _uniquesTaken = [];
    private string? _stance = standing.Car.Stance;

    /// <summary>The one that the car is in by now; null where its sheet has none by that name.</summary>
    private State? Stance => _stance is { } taken ? standing.States.GetValueOrDefault(taken) : null;

    /// <summary>Minutes of stance changes after the first into each stance.</summary>
    public Minutes ExtraStanceChanges { get; private set; }

    public ValueList<Step> Steps(IReadOnlyCollection<WaySource> ways)
    {
        foreach (var way in ways.Where(way => way.Fact.Kind == FactKind.Off))
            _ = IsLifted(way) ? _toLift.Add(way.Fact.Subject) : _spared.Add(way.Fact.Subject);
        return ways.Select(StepOf).ToValueList();
    }

    private Step StepOf(WaySource way)
    {
        var place = Workplace.Zone(way, standing);
        var posture = Workplace.Posture(way, place, standing);
        var step = new Step
        {
            Fact = way.Fact,
            Way = way.Name,
            Says = Wording.Says(way, standing),
            Tool = Workplace.Tool(way, standing) ?? "hands",
            Cost = CostOf(way),
            Place = place ?? Zone.WholeCar,
            Posture = posture ?? "standing",
            Stance = _stance,
            Needs = way.Needs.ToValueList(),
            Destroys = way.Way?.Destroys ?? [],
            Cautions = [.. Cautions.Weak(standing, _stance, posture), .. StoodOn(way), .. Cautions.Of(way, standing, _gone)],
            Prop = Propping.Of(way, standing, _opened, _toLift, _spared, _gone),
            Origin = way.Way?.Origin ?? Workplace.OutOf(way, standing)?.Origin ?? Origin.Default,
        };
        if (way.Fact.Kind == FactKind.Off)
            _gone.UnionWith(Fire.FireNeeds.HeldBy(way.Fact, standing));
        if (way.Fact.Kind == FactKind.Open)
            _opened.Add(way.Fact.Subject);
        if (way.Fact.Kind == FactKind.Off && _toLift.Remove(way.Fact.Subject))
            _spared.Add(way.Fact.Subject);
        return step;
    }

    /// <summary>No order of the steps keeps on what carries the car, or none was asked for: then it is said.</summary>
    private IEnumerable<string> StoodOn(WaySource way)
    {
        if (way.Fact.Kind == FactKind.Off && IsLifted(way) && Stance is { } stance && standing.TakesOffCarrier(way.Fact, stance))
            yield return $"The car stands on it now ({stance.Name}): carry the car some other way before it comes off.";
    }

    private static bool IsLifted(WaySource way) => way.Name.Length == 0 || way.Name == "alone";

    private Cost CostOf(WaySource way)
    {
        if (!standing.IsStance(way.Fact))
            return way.Cost + Pricing.OfUniques(way.Uniques.Count(_uniquesTaken.Add), standing.Car.Settings);
        _stance = way.Fact.Subject;
        var isPriced = !standing.IsTrue(way.Fact) && _stancesTaken.Add(_stance);
        if (isPriced)
            return way.Cost;
        ExtraStanceChanges += way.Cost.Open;
        return Cost.Nothing;
    }
}
