using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Access.Fire;

namespace Refettle.Timeline.Network;

/// <summary>The steps that were done already, as far as the car as it stands tells: they are taken back at
/// refit like those still to come.</summary>
/// <remarks>Which way was used then is not kept with the car: of those that could be used after what was done
/// before, the one without fire that destroys least and closes quickest stands in for it.</remarks>
internal sealed class StepsDone
{
    private readonly CarStanding _standing;
    private readonly CarStanding _whole;
    private readonly WayCatalogue _ways;
    private readonly Dictionary<Fact, WaySource[]> _waysOf = [];
    private readonly HashSet<Fact> _left;
    private readonly HashSet<Fact> _true = [];
    private readonly List<Step> _steps = [];
    private readonly Dictionary<Fact, ValueList<Fact>> _unmet = [];

    private StepsDone(CarStanding standing)
    {
        (_standing, _whole) = (standing, new(standing.Car with { Done = [] }));
        _ways = new(_whole, [], isGated: false);
        _left = [.. standing.Car.Done.Concat(Implied(standing)).Where(fact => !standing.IsStance(fact))];
    }

    /// <summary>Each after those it needed, as far as they were done: who says that the wheel is off need not have
    /// said so of its cap. What cannot have been done in any order by the description of the car comes last.</summary>
    public static StepsDone Of(CarStanding standing)
    {
        var done = new StepsDone(standing);
        while ((done.Next(done.IsOpenTo) ?? done.Next(done.IsOpenToWhatWasDone)) is { } way)
            done.Add(way);
        foreach (var fact in done._left.Where(fact => !done.IsOnlyTheSumOfItsMembers(fact)).Order().ToList())
            done.Add(done.Ways(fact).OrderBy(done.IsWithWhatStayedOn).FirstOrDefault());
        return done;
    }

    public ValueList<Step> Steps => _steps.ToValueList();

    /// <summary>Marks by which something is done although what it needs was not by then. How that goes together no rule tells: it
    /// is done as well as it can be, and where it cannot, the marks are told.</summary>
    public OddMarks Odd => new(_unmet);

    /// <summary>Parts off and joints open that the log does not name: they went with others.</summary>
    private static IEnumerable<Fact> Implied(CarStanding standing) =>
        standing.Parts.Keys.Select(Fact.Off).Concat(standing.Joints.Keys.Select(Fact.Open)).Where(standing.IsTrue);

    /// <summary>What can have come next: joints and states, then parts by themselves, then
    /// sub-assemblies, then what came with them.</summary>
    private WaySource? Next(Predicate<WaySource> isOpen) =>
        _left.Order().OrderBy(Rank).SelectMany(Ways).FirstOrDefault(way => isOpen(way) && !IsOnlyTheSumOfItsMembers(way.Fact));

    private int Rank(Fact fact) => fact.Kind switch
    {
        FactKind.Open or FactKind.State => 0,
        FactKind.Off when !_standing.SubAssemblies.ContainsKey(fact.Subject) => 1,
        FactKind.Off => 2,
        _ => 3,
    };

    private WaySource[] Ways(Fact fact) => _waysOf.TryGetValue(fact, out var ways) ? ways
        : _waysOf[fact] = [.. _ways.Of(fact).OrderByDescending(way => way.IsAllowed).ThenBy(way => HotWork.Of(way, _whole) & Danger.Fire)
            .ThenBy(way => way.Way?.Destroys.Count ?? 0).ThenBy(way => way.Cost.Close.Value)];

    private bool IsOpenTo(WaySource way) => way.Needs.All(need => _true.Contains(need) || _standing.IsStance(need));

    /// <summary>What it needs was done before, or never by the log.</summary>
    private bool IsOpenToWhatWasDone(WaySource way) =>
        !IsWithWhatStayedOn(way) && way.Needs.All(need => _true.Contains(need) || !_left.Contains(need));

    /// <summary>Off as a member of a sub-assembly that did not come off as one: nothing would put it back.</summary>
    private bool IsWithWhatStayedOn(WaySource way) =>
        way.Needs.Any(need => need.Kind == FactKind.Off && _standing.SubAssemblies.ContainsKey(need.Subject) && !_true.Contains(need)
            && way.Name == $"with {need.Subject}");

    /// <summary>A sub-assembly whose members all came off by themselves.</summary>
    private bool IsOnlyTheSumOfItsMembers(Fact fact) => fact.Kind == FactKind.Off
        && _standing.SubAssemblies.TryGetValue(fact.Subject, out var unit) && unit.Members.All(part => _true.Contains(Fact.Off(part)));

    private void Add(WaySource? way)
    {
        if (way is null)
            return;
        if (way.Needs.Where(need => !_true.Contains(need) && !_standing.IsStance(need)).ToValueList() is { Count: > 0 } unmet)
            _unmet[way.Fact] = unmet;
        _left.Remove(way.Fact);
        _true.Add(way.Fact);
        var place = Access.Ordering.Workplace.Zone(way, _whole);
        _steps.Add(new()
        {
            Fact = way.Fact,
            Way = way.Name,
            Says = Access.Wording.Says(way, _whole),
            Tool = Access.Ordering.Workplace.Tool(way, _whole) ?? "hands",
            Cost = way.Cost + Pricing.OfUniques(way.Uniques.Count, _standing.Car.Settings),
            Place = place ?? Zone.WholeCar,
            Posture = Access.Ordering.Workplace.Posture(way, place, _whole) ?? "standing",
            Cautions = Access.Cautions.Of(way, _whole),
            Origin = way.Way?.Origin ?? Origin.Default,
        });
    }
}
