using System.Numerics;

namespace Refettle.Stuck.OpenUp;

/// <summary>Weighs sets of accesses against each other.</summary>
internal sealed class Search
{
    /// <summary>So many outcomes are gone through, those of questions about single tries included;
    /// beyond, they are drawn by chance.</summary>
    private const long MostOutcomes = 2_000_000;

    private readonly OpenUpQuestion _question;
    private readonly ValueList<Group> _groups;
    private readonly OpeningCost _opening;
    private readonly Beliefs _beliefs;
    private readonly LevelWeights[] _now;
    private readonly Race _race;
    private readonly int _useful;

    public Search(OpenUpQuestion question, ValueList<Group> groups, OpeningCost opening, Random random, int draws)
    {
        (_question, _groups, _opening, _beliefs) = (question, groups, opening, new(question));
        _now = _beliefs.Now();
        _race = new(() => Scenario.Draw(_beliefs, groups, random), draws);
        _useful = groups.Aggregate(0, (all, group) => all | group.Tables.Wants);
    }

    public Weighed Weigh()
    {
        if (BitOperations.PopCount((uint)_useful) > OpenUpPlanner.MostExact)
            return new(Climb(), _groups);
        var outlooks = Bits.Subsets(_useful).Select(Ahead).ToList();
        var outcomes = outlooks.Sum(outlook => Math.Min(outlook.Outcomes, MostOutcomes)) * (1 + (2 * _groups.Count));
        return new(outcomes <= MostOutcomes ? All(outlooks) : _race.Run(outlooks), _groups);
    }

    /// <summary>Every set, but those that cost more for certain than another does in all.</summary>
    private static ValueList<WeighedSet> All(List<Outlook> outlooks)
    {
        var (known, best) = (new List<WeighedSet>(), double.PositiveInfinity);
        foreach (var ahead in outlooks.OrderBy(outlook => outlook.First != 0).ThenBy(outlook => outlook.Certain)
            .ThenBy(outlook => outlook.First))
        {
            if (ahead.Certain >= best)
                continue;
            known.Add(new(ahead.First, ahead.Certain, ahead.Exact(), true, false));
            best = ahead.First == 0 ? best : Math.Min(best, known[^1].Total);
        }

        return known.Select(one => one with { IsDearer = known.Any(other => other.Total < one.Total) }).ToValueList();
    }

    /// <summary>Opens or leaves one access after the other while that helps, from nothing and from everything.</summary>
    private ValueList<WeighedSet> Climb()
    {
        var known = new Dictionary<int, WeighedSet>();
        foreach (var start in new[] { 0, _useful })
        {
            var best = Set(start);
            for (var better = best; ; best = better)
            {
                foreach (var access in Enumerable.Range(0, _question.Openings.Count).Where(access => (_useful & (1 << access)) != 0))
                    better = Set(best.First ^ (1 << access)) is var other && other.Total < better.Total ? other : better;
                if (better == best)
                    break;
            }
        }

        return _race.Ended();

        WeighedSet Set(int first) =>
            known.TryGetValue(first, out var set) ? set : known[first] = _race.Run([Ahead(first)]).Single(one => one.First == first);
    }

    private Outlook Ahead(int first) => new(first, _groups, _beliefs, _now, _opening);
}

/// <summary>A set of accesses with what it is expected to cost.</summary>
/// <param name="Certain">Minutes that do not hang on what is opened later.</param>
/// <param name="Later">The others.</param>
/// <param name="IsDearer">Whether it clearly costs more than the best.</param>
internal sealed record WeighedSet(int First, double Certain, Expectation Later, bool IsExact, bool IsDearer)
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

    /// <summary>What to open, an old choice kept as long as nothing is clearly better.</summary>
    public int Advice(int old) => All.Any(one => one.First == old && !one.IsDearer) ? old : Best.First;
}
