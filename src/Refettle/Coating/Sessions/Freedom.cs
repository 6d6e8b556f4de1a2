namespace Refettle.Coating.Sessions;

/// <summary>The occasions that are left for the coats of a row.</summary>
/// <remarks>A row is a chain, so it is enough that each coat agrees with its neighbours: then every occasion that is left belongs to a full
/// choice for the row (Freuder, Journal of the ACM 29, 1982: arc consistency decides constraint trees).</remarks>
internal sealed class Freedom
{
    private readonly OccasionSet[][] _after;
    private readonly OccasionSet[] _left;

    private Freedom(OccasionSet[][] after, OccasionSet[] left) => (_after, _left) = (after, left);

    /// <summary>All that a row leaves; empty sets where it cannot be kept.</summary>
    public static Freedom Of(CoatRow row, int occasions)
    {
        var after = row.Coats.Select(coat => coat.After.Select(next => OccasionSet.Of(next, occasions)).ToArray()).ToArray();
        return new Freedom(after, [.. row.Coats.Select(coat => OccasionSet.Of(coat.May, occasions))]).Agreed(occasions);
    }

    public int Count => _left.Length;

    public OccasionSet this[int coat] => _left[coat];

    public bool IsEmpty => _left.Any(set => set.IsEmpty);

    /// <summary>The same with some coats' occasions cut down.</summary>
    public Freedom Cut(Func<int, OccasionSet, OccasionSet> cut, int occasions) =>
        new Freedom(_after, [.. _left.Select((set, coat) => cut(coat, set))]).Agreed(occasions);

    /// <summary>The first coat that no occasion is left for when coats are placed one after the
    /// other; null when all can be placed.</summary>
    public static int? Stuck(CoatRow row, int occasions)
    {
        var here = OccasionSet.None(occasions);
        for (var i = 0; i < row.Coats.Count; i++)
        {
            here = Follow(row, i, here, occasions);
            if (here.IsEmpty)
                return i;
        }

        return null;
    }

    private static OccasionSet Follow(CoatRow row, int coat, OccasionSet before, int occasions)
    {
        var may = OccasionSet.Of(row.Coats[coat].May, occasions);
        return coat == 0 ? may : may.And(OccasionSet.Of(before.All().SelectMany(one => row.Coats[coat].After[one]).Distinct(), occasions));
    }

    /// <summary>Once forward, once back.</summary>
    private Freedom Agreed(int occasions)
    {
        for (var i = 1; i < _left.Length; i++)
            _left[i] = _left[i].And(_left[i - 1].All().Aggregate(OccasionSet.None(occasions), (reach, one) => reach.Or(_after[i][one])));
        for (var i = _left.Length - 2; i >= 0; i--)
            _left[i] = OccasionSet.Of(_left[i].All().Where(one => _after[i + 1][one].Meets(_left[i + 1])), occasions);
        return this;
    }
}
