namespace Refettle.Kits;

/// <summary>Parts that could fill a connection, best first: the same prefix, the same corner, the same side, no side.</summary>
/// <param name="Best">The proposal; null when nothing fits or the fit is anybody's guess.</param>
/// <param name="All">All that could, best first.</param>
internal sealed record Candidates(string? Best, ValueList<string> All)
{
    private const int Elsewhere = 4;

    /// <param name="things">Its parts and sub-assemblies are looked at; a part comes before a sub-assembly that fits as well.</param>
    public static Candidates Of(Structure things, string role, Spot spot, string prefix)
    {
        var parts = things.Parts.Where(part => part.Roles.Contains(role)).Select(part => (part.Id, There: Spots.Of(part)));
        var units = things.SubAssemblies.Where(unit => unit.Roles.Contains(role) && !IsAtOtherEnd(unit, spot))
            .Select(unit => (unit.Id, There: Spots.Of(unit)));
        var ranked = parts.OrderBy(part => part.Id, StringComparer.Ordinal).Concat(units.OrderBy(unit => unit.Id, StringComparer.Ordinal))
            .Select(thing => (thing.Id, Rank: Rank(thing.Id, thing.There, spot, prefix)))
            .Where(candidate => candidate.Rank is not null)
            .OrderBy(candidate => candidate.Rank).ToArray();
        var isGuess = ranked is [{ Rank: Elsewhere }, _, ..];
        return new(isGuess ? null : ranked.FirstOrDefault().Id, ranked.Select(candidate => candidate.Id).ToValueList());
    }

    /// <summary>A front brake does not leave with the rear axle: what a sub-assembly is called and the corners of its
    /// members tell its end of the car.</summary>
    private static bool IsAtOtherEnd(SubAssembly unit, Spot spot)
    {
        var words = unit.Id.Split('-').Concat(unit.Members.Select(member => member.Split('-')[0])).ToHashSet();
        bool Is(params string[] end) => end.Any(words.Contains);
        var (front, rear) = (Is("front", "fl", "fr"), Is("rear", "rl", "rr"));
        return spot.IsCorner() && front != rear && front != (spot is Spot.FrontLeft or Spot.FrontRight);
    }

    /// <summary>Null for a part that lies elsewhere on the car.</summary>
    private static int? Rank(string id, Spot there, Spot spot, string prefix)
    {
        if (prefix.Length > 0 && id.StartsWith(prefix, StringComparison.Ordinal))
            return 0;
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
