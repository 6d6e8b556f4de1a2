namespace Refettle.Stock;

/// <summary>How far a line of an order has come.</summary>
public enum OrderState
{
    Open,
    PartlyArrived,
    Arrived,
    Cancelled,
}

/// <summary>An order with all that became of it.</summary>
/// <param name="Car">The car whose log it is in.</param>
/// <param name="FirstPromised">The day promised when it was placed; null when none was.</param>
/// <param name="Promised">The day promised last.</param>
public sealed record Order(
    Guid Id, string Car, string Supplier, DateOnly On, DateOnly? FirstPromised, DateOnly? Promised, int? ReturnDays, Money? Carriage,
    ValueList<OrderedLine> Lines)
{
    public bool IsOpen => Lines.Any(line => line.ToCome > 0);

    /// <summary>How the whole of it stands.</summary>
    public OrderState State => (IsOpen, Lines.Any(line => line.Arrived > 0)) switch
    {
        (true, false) => OrderState.Open,
        (true, true) => OrderState.PartlyArrived,
        (false, true) => OrderState.Arrived,
        _ => OrderState.Cancelled,
    };
}

/// <summary>A line of an order.</summary>
/// <param name="Arrivals">What came for it, by day, in order.</param>
/// <param name="SentBack">Pieces that went back.</param>
public sealed record OrderedLine(OrderLine Line, ValueList<Arrival> Arrivals, int Cancelled, int SentBack)
{
    public int Arrived => Arrivals.Sum(arrival => arrival.Count);

    /// <summary>Pieces still to come, 0 or more.</summary>
    public int ToCome => Math.Max(0, Line.Count - Arrived - Cancelled);
}

/// <summary>Pieces that came.</summary>
public sealed record Arrival(DateOnly On, string Number, int Count);

/// <summary>Things at an outside shop, or back from it.</summary>
/// <param name="Car">The car whose log it is in.</param>
public sealed record OutsideWork(
    Guid Id, string Car, string To, string Work, DateOnly On, DateOnly? Promised, Money? Price, ValueList<OutsideLine> Lines)
{
    /// <summary>Something is still away.</summary>
    public bool IsAway => Lines.Any(line => line.Away > 0);
}

/// <summary>A line of a manifest, with what came back of it.</summary>
public sealed record OutsideLine(SentItem Item, ValueList<ComeBack> Back)
{
    /// <summary>Pieces still away, 0 or more.</summary>
    public int Away => Math.Max(0, Item.Count - Back.Sum(back => back.Item.Count));

    /// <summary>A part of the car by its name; all else as it was written.</summary>
    public string Name(Structure structure) => structure.Parts.FirstOrDefault(part => $"part {part.Id}" == Item.What)?.Name ?? Item.What;
}

/// <summary>What came back on a day.</summary>
public sealed record ComeBack(DateOnly On, BackItem Item);
