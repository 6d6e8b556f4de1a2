namespace Refettle.Coating.Sessions;

/// <summary>Finds the fewest sessions, then the earliest end.</summary>
/// <remarks>
/// 1. Rows that cannot be kept are set aside; each row decides that by itself. Where room is limited, so are those that find none
/// beside the others (<see cref="Crowd"/>). 2. For k = bound, bound + 1, …: is there a plan with k sessions? The first yes is the fewest.
/// 3. With that k, the earliest occasion by which all can be over, by halving: an earlier end is a smaller question of the same kind.
/// 4. Sessions move forward one by one as long as their rows and the room let them.
/// The search of step 2 takes the coat whose last occasion is nearest, lets it join a session that is made, or makes one as late as can be,
/// where most others can join; after each choice the row is cut down, and the branch is left when
/// sessions made and sessions needed exceed k.
/// </remarks>
public static class SessionPlanner
{
    /// <param name="most">Choices that a search for one k may make; when they are used up the answer is good but not proven.
    /// Where room is limited each part is a row and a choice costs more: then a tenth, and a fortieth for an earlier end and for one row
    /// more, so that a page is not kept waiting.</param>
    public static SessionAnswer Plan(SessionQuestion question, int most = 20_000)
    {
        var (many, few) = question.IsRoomy ? (most, most) : (most / 10, most / 40);
        var stuck = question.Rows.Select(row => Freedom.Stuck(row, question.Occasions)).ToList();
        var fit = Crowd.Fitting(question, [.. Enumerable.Range(0, stuck.Count).Where(i => stuck[i] is null)], many, few);
        var crowded = Enumerable.Range(0, stuck.Count).Where(i => stuck[i] is null && !fit.Contains(i)).ToValueList();
        foreach (var i in crowded)
            stuck[i] = 0;
        if (fit.Count == 0)
            return new(question.Rows.Select(_ => ValueList<int>.Empty).ToValueList(), stuck.ToValueList(), 0, 0) { NoRoom = crowded };
        var kept = question with { Rows = fit.Select(i => question.Rows[i]).ToValueList() };
        var (best, atLeast) = Fewest(kept, many, few);
        var sooner = Sooner.Of(kept, best);
        var plans = new Queue<int[]>(sooner);
        return new(stuck.Select(one => one is null ? plans.Dequeue().ToValueList() : []).ToValueList(), stuck.ToValueList(),
            Count(kept.Rows, sooner), atLeast)
        { NoRoom = crowded };
    }

    /// <summary>The sessions of a plan.</summary>
    private static int Count(IReadOnlyList<CoatRow> rows, int[][] plan) =>
        rows.SelectMany((row, i) => row.Coats.Select((coat, j) => (coat.Product, plan[i][j]))).Distinct().Count();

    private static (int[][] Plan, int AtLeast) Fewest(SessionQuestion question, int many, int few)
    {
        var search = new SessionSearch(question, question.Occasions - 1, many);
        var (known, proven, atLeast) = (search.Any()!, true, search.Bound);
        var worst = Count(question.Rows, known);
        for (var sessions = atLeast; sessions < worst; sessions++)
        {
            if (search.Find(sessions) is { } plan)
                return (Earliest(question, sessions, plan, few), atLeast);
            proven &= !search.WasCutOff;
            atLeast += proven ? 1 : 0;
        }

        return (Earliest(question, worst, known, few), atLeast);
    }

    private static int[][] Earliest(SessionQuestion question, int sessions, int[][] plan, int most)
    {
        var (best, low, high) = (plan, 0, plan.Max(row => row[^1]));
        while (low < high)
        {
            var end = (low + high) / 2;
            if (new SessionSearch(question, end, most).Find(sessions) is { } earlier)
                (best, high) = (earlier, earlier.Max(row => row[^1]));
            else
                low = end + 1;
        }

        return best;
    }
}
