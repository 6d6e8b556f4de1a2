using System.Numerics;

namespace Refettle.Stuck.OpenUp;

/// <summary>Weighs sets of accesses against each other.</summary>
internal sealed class Search(OpenUpQuestion question, ValueList<Group> groups, Beliefs beliefs, OpeningCost opening, Random random)
{
    private const long MostOutcomes = 3_000_000;
    private const int Draws = 1000;

    private readonly Dictionary<int, WeighedSet> _known = [];
    private readonly int _useful = groups.Aggregate(0, (all, group) => all | group.Tables.Wants);
    private bool _isExact = true;

    public Weighed Weigh()
    {
        if (BitOperations.PopCount((uint)_useful) <= OpenUpPlanner.MostExact)
            WeighAll();
        else
            Climb();
        return new(_known.Values.ToValueList(), groups);
    }

    /// <summary>Every set, but those that cost more for certain than another does in all.</summary>
    private void WeighAll()
    {
        var outlooks = new List<(int First, Outlook Ahead)>();
        for (var first = _useful; ; first = (first - 1) & _useful)
        {
            outlooks.Add((first, new(first, groups, beliefs, opening)));
            if (first == 0)
                break;
        }

        _isExact = outlooks.Sum(outlook => Math.Min(outlook.Ahead.Outcomes, MostOutcomes)) <= MostOutcomes;
        var best = double.PositiveInfinity;
        foreach (var (first, ahead) in outlooks.OrderBy(outlook => outlook.First != 0).ThenBy(outlook => outlook.Ahead.Certain).ThenBy(outlook => outlook.First))
        {
            if (ahead.Certain >= best)
                continue;
            var total = Set(first, ahead).Total;
            best = first == 0 ? best : Math.Min(best, total);
        }
    }

    /// <summary>Opens or leaves one access after the other while that helps, from nothing and from everything.</summary>
    private void Climb()
    {
        _isExact = false;
        foreach (var start in new[] { 0, _useful })
        {
            var best = Set(start);
            for (var better = best; ; best = better)
            {
                foreach (var access in Enumerable.Range(0, question.Openings.Count).Where(access => (_useful & (1 << access)) != 0))
                    better = Set(best.First ^ (1 << access)) is var other && other.Total < better.Total ? other : better;
                if (better == best)
                    break;
            }
        }
    }

    private WeighedSet Set(int first) => _known.TryGetValue(first, out var known) ? known : Set(first, new(first, groups, beliefs, opening));

    private WeighedSet Set(int first, Outlook ahead) =>
        _known[first] = new(first, ahead.Certain, _isExact ? ahead.Exact() : ahead.Sampled(Draws, random), _isExact);
}

/// <summary>A set of accesses with what it is expected to cost.</summary>
/// <param name="Certain">Minutes that do not hang on what is opened later.</param>
/// <param name="Later">The others.</param>
internal sealed record WeighedSet(int First, double Certain, Expectation Later, bool IsExact)
{
    public double Total => Certain + Later.Minutes;
}

/// <summary>All sets that were weighed.</summary>
internal sealed record Weighed(ValueList<WeighedSet> All, ValueList<Group> Groups)
{
    /// <summary>The best that opens something; null when there is nothing to open.</summary>
    public WeighedSet? BestNow => All.Where(one => one.First != 0).MinBy(one => one.Total);

    public WeighedSet Best => BestNow is { } now && now.Total < Of(0).Total ? now : Of(0);

    public WeighedSet Of(int first) => All.First(one => one.First == first);
}
