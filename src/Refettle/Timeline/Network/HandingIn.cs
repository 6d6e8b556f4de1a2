using Refettle.Access;

namespace Refettle.Timeline.Network;

/// <summary>The task that takes waste where it belongs: what is there and was not handed in, and what will come.</summary>
internal sealed class HandingIn(NetworkDraft draft, CarStanding standing, RefitTasks refit)
{
    /// <summary>Common practice, no source: a drive to the collecting point; who recovers refrigerant takes it along.</summary>
    private const int MinutesAway = 45;

    private const int MinutesAtCar = 5;

    private readonly Dictionary<Fact, bool> _isHandedIn =
        standing.Car.Disturbed.ToDictionary(one => one.Fact, one => one.Since.Contains(Disturbed.HandIn));

    public void Add()
    {
        var back = refit.Steps.ToList();
        var facts = back.Select(step => step.Fact).ToHashSet();
        List<Undone> all =
        [
            .. back.Select(step => new Undone(step.Fact, step.Destroys, IsHandedIn(step.Fact))),
            .. standing.Car.Disturbed.Where(one => !facts.Contains(one.Fact) && !_isHandedIn[one.Fact])
                .Select(one => new Undone(one.Fact, [], IsHandedIn: false)),
        ];
        var found = new WasteOf(draft, standing, all);
        if (found.All() is not { Count: > 0 } waste)
            return;
        var task = draft.Add(new()
        {
            Id = Disturbed.HandIn,
            Kind = TaskKind.HandIn,
            Says = $"Hand in, each kind apart: {string.Join("; ", waste.Select(one => one.Says))}",
            Takes = new(waste.All(one => one.Kind == WasteKind.Refrigerant) ? MinutesAtCar : MinutesAway),
            Origin = Origin.CommonPractice,
            Waste = waste,
            Cautions = waste.Select(one => $"{one.Says}: {one.Keep}").ToValueList(),
            Unseen = all.Where(one => !one.IsHandedIn && _isHandedIn.ContainsKey(one.Fact) && found.IsSource(one)).Select(one => one.Fact)
                .Order().ToValueList(),
        });
        foreach (var source in found.Tasks())
            draft.Link(source, task);
    }

    /// <summary>What holds and was handed in since; what is yet to be undone is not.</summary>
    private bool IsHandedIn(Fact fact) => fact.Kind == FactKind.Off && standing.SubAssemblies.TryGetValue(fact.Subject, out var unit)
        ? unit.Members.All(part => IsHandedIn(Fact.Off(part)))
        : standing.IsTrue(fact) && _isHandedIn.GetValueOrDefault(fact);
}
