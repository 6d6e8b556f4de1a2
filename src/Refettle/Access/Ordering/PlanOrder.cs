using Refettle.Access.Derivation;

namespace Refettle.Access.Ordering;

/// <summary>Puts chosen ways into an order with few changes of tool, place, posture and stance.</summary>
/// <remarks>Stances come and go, so they are no items of the row: each change of stance that the row needs is put in between.</remarks>
internal sealed class PlanOrder
{
    // Beyond this a beam would take longer than the search for the plan.
    private const int MostForBeam = 150;

    private const int BeamWork = 100_000;

    private readonly CarStanding _standing;
    private readonly List<WaySource> _items;
    private readonly Dictionary<string, WaySource> _stances;
    private readonly Fact? _lastStance;
    private readonly Setting[] _wanted;
    private readonly Dictionary<string, long> _stanceChange = [];
    private readonly long _toolChange;
    private readonly long _placeChange;
    private readonly long _postureChange;

    private PlanOrder(CarStanding standing, IEnumerable<WaySource> chosen, ValueList<Fact> goals)
    {
        _standing = standing;
        var byKind = chosen.OrderBy(way => way.Fact).ToLookup(way => _standing.IsStance(way.Fact));
        _items = [.. byKind[false]];
        _stances = byKind[true].ToDictionary(way => way.Fact.Subject);
        _lastStance = goals.Where(_standing.IsStance).Cast<Fact?>().FirstOrDefault();
        _wanted = [.. _items.Select(way => Setting.Of(way, standing))];
        var settings = standing.Car.Settings;
        _toolChange = Pricing.Hundredths(settings.ToolChange);
        _placeChange = Pricing.Hundredths(settings.PlaceChange);
        _postureChange = Pricing.Hundredths(settings.PostureChange);
    }

    /// <summary>The ways in order, stance changes among them (a stance may come more than once).</summary>
    public static List<WaySource> Of(CarStanding standing, IEnumerable<WaySource> chosen, ValueList<Fact> goals) =>
        new PlanOrder(standing, chosen, goals).Run();

    private List<WaySource> Run()
    {
        var order = Row(withSupports: true) ?? Row(withSupports: false)
            ?? throw new InvalidOperationException("A founded plan has no order.");
        return WithStances(order);
    }

    private IReadOnlyList<int>? Row(bool withSupports)
    {
        var problem = Problem(Precedence(withSupports), withSupports);
        if (_items.Count > MostForBeam)
            return new QuickRow(problem.Before, _wanted, problem.Change).From(problem.Start);
        return Sequencing.Best(problem, Math.Clamp(BeamWork / Math.Max(1, _items.Count * _items.Count), 4, 24))?.Order;
    }

    private SequencingProblem<Setting> Problem(IReadOnlyList<IReadOnlyCollection<int>> before, bool withSupports) => new()
    {
        Before = before,
        Start = new(null, null, null, _standing.Car.Stance),
        Change = (from, item) => Change(from, item) is var change && withSupports && Drops(change.Next.Stance, item) ? null : change,
        Estimate = Estimate,
        IsDetourFree = true,
    };

    /// <summary>Needs before users; what a stance needs before what needs the stance; that before the loss of what carries it.</summary>
    private HashSet<int>[] Precedence(bool withSupports)
    {
        var number = _items.Select((way, item) => (way.Fact, item)).ToDictionary(pair => pair.Fact, pair => pair.item);
        var before = _items.Select(way => way.Needs
            .Concat(way.Stance is { } stance && _stances.TryGetValue(stance, out var change) ? change.Needs : [])
            .Where(number.ContainsKey).Select(fact => number[fact]).ToHashSet()).ToArray();
        if (!withSupports)
            return before;
        for (var item = 0; item < _items.Count; item++)
        {
            foreach (var part in PartsLeaving(_items[item]))
                before[item].UnionWith(ItemsCarriedBy(part).Where(earlier => earlier != item));
        }

        return before;
    }

    private IEnumerable<int> ItemsCarriedBy(string part) =>
        Enumerable.Range(0, _items.Count).Where(item =>
            _items[item].Stance is { } stance && _standing.Carriers(_standing.States[stance]).Contains(part));

    private ValueList<string> PartsLeaving(WaySource way) =>
        way.Fact.Kind != FactKind.Off ? []
        : _standing.SubAssemblies.TryGetValue(way.Fact.Subject, out var unit) ? unit.Members
        : [way.Fact.Subject];

    private (long Cost, Setting Next) Change(Setting from, int item)
    {
        var wanted = _wanted[item];
        var next = new Setting(wanted.Tool ?? from.Tool, wanted.Place ?? from.Place, wanted.Posture ?? from.Posture,
            wanted.Stance ?? from.Stance);
        var cost = (next.Tool == from.Tool ? 0 : _toolChange)
            + (next.Place == from.Place ? 0 : _placeChange)
            + (next.Posture == from.Posture ? 0 : _postureChange)
            + (next.Stance == from.Stance ? 0 : StanceChange(next.Stance!));
        return (cost, next);
    }

    /// <summary>Whether a part that the stance rests on would be taken from under it.</summary>
    private bool Drops(string? stance, int item) =>
        stance is not null && _items[item].Fact.Kind == FactKind.Off && _standing.States.TryGetValue(stance, out var state)
        && PartsLeaving(_items[item]).Intersect(_standing.Carriers(state)).Any();

    /// <summary>Every tool, place and posture that is still to come and not at hand has to be changed to at least once.</summary>
    private long Estimate(Setting from, IReadOnlyList<int> remaining)
    {
        var (tools, places, postures) = (new HashSet<string>(), new HashSet<string>(), new HashSet<string>());
        foreach (var item in remaining)
        {
            var wanted = _wanted[item];
            Note(tools, wanted.Tool, from.Tool);
            Note(places, wanted.Place, from.Place);
            Note(postures, wanted.Posture, from.Posture);
        }

        return (tools.Count * _toolChange) + (places.Count * _placeChange) + (postures.Count * _postureChange);

        static void Note(HashSet<string> seen, string? value, string? now)
        {
            if (value is not null && value != now)
                seen.Add(value);
        }
    }

    private long StanceChange(string stance)
    {
        if (!_stanceChange.TryGetValue(stance, out var cost))
            _stanceChange.Add(stance, cost = 100 + Pricing.Hundredths(EnteringStance(stance)?.Cost.Open ?? Minutes.Zero));
        return cost;
    }

    /// <summary>The way into a stance: the chosen one, or for a stance that the car was in at the start its quickest.</summary>
    private WaySource? EnteringStance(string stance) =>
        _stances.TryGetValue(stance, out var chosen) ? chosen
        : new WayCatalogue(_standing, []).Of(Fact.State(stance)).Where(way => way.IsAllowed).MinBy(way => way.Cost.Open.Value);

    private List<WaySource> WithStances(IReadOnlyList<int> order)
    {
        var row = new List<WaySource>();
        var stance = _standing.Car.Stance;
        foreach (var way in order.Select(item => _items[item]))
        {
            if (way.Stance is { } wanted)
                Take(wanted);
            row.Add(way);
        }

        if (_lastStance is { } last)
            Take(last.Subject);
        return row;

        void Take(string wanted)
        {
            if (wanted != stance && EnteringStance(wanted) is { } change)
                row.Add(change);
            stance = wanted;
        }
    }
}
