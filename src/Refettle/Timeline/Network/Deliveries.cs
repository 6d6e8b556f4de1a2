namespace Refettle.Timeline.Network;

/// <summary>Things that are ordered and waited for.</summary>
public static class Deliveries
{
    /// <summary>Days on the way, while nobody has said how many: shown as a default.</summary>
    public const int DefaultDays = 5;

    private const int MinutesOfADay = 24 * 60;

    private const string OneSitting = "order.parts";

    private const int MinutesAPart = 3;

    /// <summary>The way of something that is ordered in one sitting with all else that is to be replaced.</summary>
    /// <returns>The wait that ends when it is here.</returns>
    /// <param name="days">On the way; null takes the default.</param>
    internal static string Together(NetworkDraft draft, string about, string thing, decimal? days = null)
    {
        if (draft.Has($"wait.delivery.{about}"))
            return $"wait.delivery.{about}";
        if (!draft.Has(OneSitting))
            draft.Add(new() { Id = OneSitting, Kind = TaskKind.Order, Says = "Order what will be replaced:", Takes = new(10), Origin = Origin.Default });
        draft.Change(OneSitting, task => task with { Says = $"{task.Says}{(task.Says.EndsWith(':') ? "" : ",")} {thing}", Takes = task.Takes + new Minutes(MinutesAPart) });
        var way = draft.Add(TryTasks.Wait($"wait.delivery.{about}", $"On the way: {thing}", Days(days ?? DefaultDays), days is null ? Origin.Default : Origin.User));
        draft.Link(OneSitting, way);
        return way;
    }

    /// <summary>An order and its way here.</summary>
    /// <returns>The wait that ends when it is here.</returns>
    internal static string Add(NetworkDraft draft, string about, string things, JobWait? wait = null)
    {
        var order = draft.Add(new()
        {
            Id = $"order.{about}",
            Kind = TaskKind.Order,
            Says = $"Order: {things}",
            Takes = new(10),
            Origin = Origin.Default,
        });
        var way = draft.Add(TryTasks.Wait($"wait.delivery.{about}", $"On the way: {things}", Days(wait?.Days ?? DefaultDays), wait?.Origin ?? Origin.Default));
        draft.Link(order, way);
        return way;
    }

    public static Minutes Days(decimal days) => new(Math.Ceiling(days * MinutesOfADay));
}
