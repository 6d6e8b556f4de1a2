namespace Refettle.Kits;

/// <summary>Parts that could fill a connection, best first: the same prefix, the same corner, the same side, no side.</summary>
/// <param name="Best">The proposal; null when nothing fits or the fit is anybody's guess.</param>
/// <param name="All">All that could, best first.</param>
internal sealed record Candidates(string? Best, ValueList<string> All)
{
    private const int Elsewhere = 4;

    public static Candidates Of(IEnumerable<Part> parts, string role, Spot spot, string prefix)
    {
        var ranked = parts.Where(part => part.Roles.Contains(role))
            .Select(part => (part.Id, Rank: Rank(part, spot, prefix)))
            .Where(candidate => candidate.Rank is not null)
            .OrderBy(candidate => candidate.Rank).ThenBy(candidate => candidate.Id, StringComparer.Ordinal)
            .ToArray();
        var isGuess = ranked is [{ Rank: Elsewhere }, _, ..];
        return new(isGuess ? null : ranked.FirstOrDefault().Id, ranked.Select(candidate => candidate.Id).ToValueList());
    }

    /// <summary>Null for a part that lies elsewhere on the car.</summary>
    private static int? Rank(Part part, Spot spot, string prefix)
    {
        if (prefix.Length > 0 && part.Id.StartsWith(prefix, StringComparison.Ordinal))
            return 0;
        var there = Spots.Of(part);
        if (there == spot)
            return 1;
        if (there == Spot.None)
            return 3;
        if (spot == Spot.None)
            return Elsewhere;
        if (there.Side() != spot.Side() || (there.IsCorner() && spot.IsCorner()))
            return null;
        return there.IsCorner() ? Elsewhere : 2;
    }
}
