namespace Refettle.Coating.Sessions;

/// <summary>What a row takes of the spray corner while one of its coats goes on.</summary>
/// <param name="SquareMetres">0 when not known.</param>
public readonly record struct SessionLoad(int Pieces, decimal SquareMetres)
{
    public static SessionLoad operator +(SessionLoad one, SessionLoad other) =>
        new(one.Pieces + other.Pieces, one.SquareMetres + other.SquareMetres);
}

/// <summary>What fits into the spray corner at one occasion, all products together.</summary>
/// <param name="Pieces">Null for any number.</param>
/// <param name="SquareMetres">Null for any area.</param>
public sealed record SessionRoom(int? Pieces, decimal? SquareMetres)
{
    public static SessionRoom Endless { get; } = new(null, null);

    public bool IsEndless => Pieces is null && SquareMetres is null;

    public bool Holds(SessionLoad load) => !(load.Pieces > Pieces) && !(load.SquareMetres > SquareMetres);

    /// <summary>How many rooms like this a load takes at least, when so much room is left elsewhere.</summary>
    /// <param name="spare">Of some occasions, added up.</param>
    public int Needed(SessionLoad load, SessionLoad spare) =>
        Math.Max(Needed(load.Pieces - spare.Pieces, Pieces), Needed(load.SquareMetres - spare.SquareMetres, SquareMetres));

    /// <summary>What is left beside a load; 0 where there is no limit.</summary>
    public SessionLoad Beside(SessionLoad load) =>
        new((Pieces ?? load.Pieces) - load.Pieces, (SquareMetres ?? load.SquareMetres) - load.SquareMetres);

    /// <summary>What is left of it beside a load, never less than nothing.</summary>
    public SessionRoom Without(SessionLoad load) =>
        new(Pieces is { } pieces ? Math.Max(0, pieces - load.Pieces) : null,
            SquareMetres is { } area ? Math.Max(0, area - load.SquareMetres) : null);

    private static int Needed(decimal rest, decimal? room) => room is { } each && rest > 0 && each > 0 ? (int)Math.Ceiling(rest / each) : 0;
}
