namespace Refettle.Coating.Sessions;

/// <summary>Which coats go on together, so that the gun is made ready as seldom as can be.</summary>
/// <remarks>Given are <see cref="Occasions"/> points in time, 0 to n − 1, and rows of coats. A coat of a product may
/// go on at some of the occasions; which of them may follow which is a relation between one coat of a row and the next, so windows may
/// depend on the weather in between. Asked is an occasion for every coat. A session is a pair (product, occasion) that some coat has; the
/// fewest sessions are sought, and among those the earliest end. One coat a row and windows without gaps make it the stabbing of intervals,
/// which is easy; in general it holds hitting set, which is not.</remarks>
/// <param name="Occasions">How many points in time there are.</param>
public sealed record SessionQuestion(int Occasions, ValueList<CoatRow> Rows)
{
    /// <summary>What fits in at any one occasion, all products together: with a limit the question holds bin packing too.</summary>
    public SessionRoom Room { get; init; } = SessionRoom.Endless;

    /// <summary>What fits in at each occasion, where that is not always the same; empty where it is.</summary>
    public ValueList<SessionRoom> Rooms { get; init; } = [];

    public SessionRoom RoomAt(int occasion) => Rooms.Count == 0 ? Room : Rooms[occasion];

    public bool IsRoomy => Rooms.Count == 0 ? Room.IsEndless : Rooms.All(room => room.IsEndless);

    /// <summary>No occasion has more room.</summary>
    public SessionRoom MostRoom => Rooms.Count == 0 ? Room
        : new(Rooms.Any(room => room.Pieces is null) ? null : Rooms.Max(room => room.Pieces),
            Rooms.Any(room => room.SquareMetres is null) ? null : Rooms.Max(room => room.SquareMetres));
}

/// <summary>Coats that go on the same things one after the other.</summary>
/// <param name="Coats">One or more.</param>
public sealed record CoatRow(ValueList<CoatToCome> Coats)
{
    /// <summary>What it takes of the room at each of its coats, and until that is dry.</summary>
    public SessionLoad Load { get; init; }

    /// <summary>The last occasion at which it still dries from what was put on before; −1 where at none. The rooms of the
    /// question are without what dries from before, so until then it takes no more of them.</summary>
    public int TakenUntil { get; init; } = -1;
}

/// <summary>A coat that is to be put on.</summary>
/// <param name="May">The occasions that the coat may have, rising.</param>
/// <param name="After">For each occasion of the coat before, those that may follow; empty for the first coat of a row.</param>
public sealed record CoatToCome(string Product, ValueList<int> May, ValueList<ValueList<int>> After)
{
    /// <summary>For each occasion the last one at which it takes room when put on then; empty where that is its own.</summary>
    public ValueList<int> TakesUntil { get; init; } = [];

    /// <summary>All occasions at which it takes room when put on at one.</summary>
    public IEnumerable<int> Taken(int occasion) =>
        Enumerable.Range(occasion, (TakesUntil.Count == 0 ? occasion : TakesUntil[occasion]) - occasion + 1);
}

/// <summary>Occasions for all coats.</summary>
/// <param name="Rows">For each row of the question the occasions of its coats; empty where the row cannot be kept.</param>
/// <param name="Stuck">For each row the first coat that no occasion is left for, counted from 0; null where it can be kept.</param>
/// <param name="AtLeast">No plan of all rows that are planned has fewer sessions.</param>
public sealed record SessionAnswer(ValueList<ValueList<int>> Rows, ValueList<int?> Stuck, int Sessions, int AtLeast)
{
    /// <summary>The rows that could be kept alone, and for which no room was found beside the others; they
    /// are stuck at their first coat.</summary>
    public ValueList<int> NoRoom { get; init; } = [];

    public bool IsProven => Sessions == AtLeast;
}
