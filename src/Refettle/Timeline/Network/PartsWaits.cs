namespace Refettle.Timeline.Network;

/// <summary>Lets tasks wait for what they take, as the shelf says; where nobody asked it, for a delivery by default.</summary>
internal sealed class PartsWaits(NetworkDraft draft, PartsAhead? ahead)
{
    private readonly ILookup<string, PlaceParts>? _places = ahead?.Places.ToLookup(place => place.Thing);

    private readonly Dictionary<string, AwayPart> _away = ahead?.Away.ToDictionary(away => away.Part) ?? [];

    public bool IsAsked => ahead is not null;

    /// <summary>The wait for a part that is at a shop; null when it is not.</summary>
    public string? Back(string part) =>
        _away.TryGetValue(part, out var away) ? Deliveries.Back(draft, away.Work, TryTasks.AtShop(part)) : null;

    /// <summary>Parts at a shop that nothing waits for yet.</summary>
    public IEnumerable<AwayPart> Unawaited =>
        _away.Values.Where(one => !draft.Named(TryTasks.AtShop(one.Part)).Any(id => draft[id].Delivery == one.Work)).ToList();

    /// <summary>A task takes what goes onto a place.</summary>
    /// <param name="unasked">Makes the wait where the shelf was not asked; null for what is taken to be there then.</param>
    public void Take(string task, string thing, string why, Func<string>? unasked)
    {
        if (_places is null && unasked is not null)
            draft.Link(unasked(), task, why: why);
        foreach (var place in _places?[thing].Where(one => !draft[task].Parts.Contains(one)).ToList() ?? [])
        {
            draft.Change(task, old => old with { Parts = [.. old.Parts, place] });
            foreach (var consignment in place.IsWaitedFor ? place.ToCome : [])
                draft.Link(Deliveries.Of(draft, consignment), task, why: $"{why}: {place.Says}");
        }
    }

    /// <summary>A task destroys what is at a place, so another one is in hand before it.</summary>
    /// <returns>Whether the shelf knows of the place: if not, somebody has to order it by its words.</returns>
    public bool Have(string task, string thing)
    {
        Take(task, thing, InHand, unasked: null);
        return draft[task].Parts.Any(place => place.Thing == thing);
    }

    /// <summary>Why a task waits for what it destroys.</summary>
    public const string InHand = "in hand before it is destroyed";
}
