namespace Refettle.Timeline.Network;

/// <summary>Lets tasks wait for what they take, as the shelf says; where nobody asked it, for a delivery by default.</summary>
internal sealed class PartsWaits(NetworkDraft draft, PartsAhead? ahead)
{
    private const int MinutesAPart = 3;

    private const int MinutesOfADay = 24 * 60;

    private readonly ILookup<string, PlaceParts>? _places = ahead?.Places.ToLookup(place => place.Thing);

    private readonly Dictionary<string, AwayPart> _away = ahead?.Away.ToDictionary(away => away.Part) ?? [];

    public bool IsAsked => ahead is not null;

    /// <summary>Parts at a shop.</summary>
    public IEnumerable<AwayPart> Away => _away.Values;

    /// <summary>The wait for a part that is at a shop; null when it is not.</summary>
    public string? Back(string part) => _away.TryGetValue(part, out var away) ? WaitFor(away.Work, $"wait.shop.{part}") : null;

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
                draft.Link(WaitFor(consignment), task, why: $"{why}: {place.Says}");
        }
    }

    /// <summary>The wait that ends when it is here: under way since it was ordered, or behind its order.</summary>
    private string WaitFor(Consignment consignment, string? name = null)
    {
        var id = name ?? $"wait.delivery.{consignment.Id}";
        if (draft.Has(id))
            return id;
        var takes = new Minutes(Math.Ceiling(consignment.Days * MinutesOfADay));
        draft.Add(TryTasks.Wait(id, consignment.Says, takes, consignment.Origin) with
        {
            Delivery = consignment,
            Mark = consignment.On is { } on ? new(id, TaskProgress.Begun, on.AtMidnight()) : null,
        });
        if (consignment.On is null)
            draft.Link(Order(consignment), id);
        return id;
    }

    /// <summary>One sitting for each supplier.</summary>
    private string Order(Consignment consignment)
    {
        var from = consignment.From is { } supplier ? Identifier.From(supplier) : "parts";
        var id = $"order.{from}";
        if (!draft.Has(id))
            draft.Add(new() { Id = id, Kind = TaskKind.Order, Says = consignment.From is null ? "Order what will be replaced" : $"Order at {consignment.From}", Takes = new(10), Origin = Origin.Default });
        draft.Change(id, task => task with { Takes = task.Takes + new Minutes(MinutesAPart) });
        return id;
    }
}
