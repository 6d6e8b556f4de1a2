namespace Refettle.Timeline.Network;

/// <summary>Things that are ordered and waited for: whoever needs one links to the wait that ends when it is here.</summary>
public static class Deliveries
{
    /// <summary>Days on the way, while nobody has said how many: shown as a default.</summary>
    public const int DefaultDays = 5;

    private const int MinutesOfADay = 24 * 60;

    private const int MinutesASitting = 10;

    private const int MinutesAPart = 3;

    private const string Replaced = "Order what will be replaced";

    /// <summary>The way of something that is ordered in one sitting with all else that is to be replaced.</summary>
    /// <param name="days">On the way; null takes the default.</param>
    internal static string Together(NetworkDraft draft, string about, string thing, decimal? days = null)
    {
        if (draft.Has(Name(about)))
            return Name(about);
        var sitting = Sitting(draft, "parts", $"{Replaced}:");
        draft.Change(sitting, task => task with { Says = $"{task.Says}{(task.Says.EndsWith(':') ? "" : ",")} {thing}" });
        return Behind(draft, sitting, OnTheWay(about, thing, days, Origin.User));
    }

    /// <summary>An order of its own and its way here.</summary>
    internal static string Add(NetworkDraft draft, string about, string things, JobWait? wait = null) =>
        Behind(draft, draft.Add(Order(about, $"Order: {things}")),
            OnTheWay(about, things, wait?.Days, wait?.Origin ?? Origin.Default) with { AtWorst = AtWorst(wait) });

    /// <summary>The way of what the shelf knows: under way since it was ordered, or behind one sitting for its supplier.</summary>
    internal static string Of(NetworkDraft draft, Consignment consignment) =>
        Of(draft, consignment, Name(consignment.Id), Promiser.Supplier);

    /// <summary>The same of what is at a shop.</summary>
    internal static string Back(NetworkDraft draft, Consignment consignment, string asked) =>
        Of(draft, consignment, asked, Promiser.Shop);

    /// <param name="asked">The name of its wait; where something else has it the wait gets a number.</param>
    private static string Of(NetworkDraft draft, Consignment consignment, string asked, Promiser promised)
    {
        if (draft.Named(asked).FirstOrDefault(one => draft[one].Delivery == consignment) is { } known)
            return known;
        var id = draft.Add(TryTasks.Wait(asked, consignment.Says, Days(consignment.Days), consignment.Origin, promised) with
        { Delivery = consignment });
        draft.Change(id, task => task with { Mark = consignment.On is { } on ? new(id, TaskProgress.Begun, on.AtMidnight()) : null });
        if (consignment.On is null)
            draft.Link(consignment.From is { } supplier
                ? Sitting(draft, Identifier.From(supplier), $"Order at {supplier}")
                : Sitting(draft, "parts", Replaced), id);
        return id;
    }

    /// <summary>Whether a task orders at a supplier by part numbers: it is over once the order is in the books, which a
    /// mark alone does not bring there.</summary>
    public static bool IsPlaced(TaskNetwork network, WorkTask task) => task.Kind == TaskKind.Order
        && network.Links.Where(link => link.Before == task.Id)
            .Any(link => network.Tasks.Any(wait => wait.Id == link.After && wait.Delivery is { From: not null, On: null }));

    public static Minutes Days(decimal days) => new(Math.Ceiling(days * MinutesOfADay));

    internal static Minutes? AtWorst(JobWait? wait) => wait?.MostDays is { } most ? Days(most) : null;

    private static string Name(string about) => $"wait.delivery.{about}";

    private static WorkTask OnTheWay(string about, string things, decimal? days, Origin origin) =>
        TryTasks.Wait(Name(about), $"On the way: {things}", Days(days ?? DefaultDays), days is null ? Origin.Default : origin, Promiser.Supplier);

    private static string Behind(NetworkDraft draft, string order, WorkTask wait)
    {
        var way = draft.Add(wait);
        draft.Link(order, way);
        return way;
    }

    /// <summary>One sitting for all that is ordered together; each thing takes a little longer.</summary>
    private static string Sitting(NetworkDraft draft, string from, string says)
    {
        var id = $"order.{from}";
        if (!draft.Has(id))
            draft.Add(Order(from, says));
        draft.Change(id, task => task with { Takes = task.Takes + new Minutes(MinutesAPart) });
        return id;
    }

    private static WorkTask Order(string about, string says) =>
        new() { Id = $"order.{about}", Kind = TaskKind.Order, Says = says, Takes = new(MinutesASitting), Origin = Origin.Default };
}
