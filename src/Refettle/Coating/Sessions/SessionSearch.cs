namespace Refettle.Coating.Sessions;

/// <summary>Looks for a plan with no more than so many sessions and no coat after an occasion. Exhaustive unless cut off.</summary>
/// <remarks>With a session for every coat and endless room the first choices always do: every such question is answered.
/// Of rows that are alike none begins later than the one before it: any plan becomes such a one when they change places.</remarks>
internal sealed class SessionSearch
{
    private readonly SessionQuestion _question;
    private readonly int _most;
    private readonly int[][] _products;
    private readonly int[] _kinds;
    private readonly SessionBranch _begin;
    private int _left;

    public SessionSearch(SessionQuestion question, int end, int most)
    {
        (_question, _most) = (question, Math.Max(most, question.Rows.Sum(row => row.Coats.Count) + 1));
        var names = question.Rows.SelectMany(row => row.Coats).Select(coat => coat.Product).Distinct().ToList();
        _products = [.. question.Rows.Select(row => row.Coats.Select(coat => names.IndexOf(coat.Product)).ToArray())];
        var kinds = question.Rows.Distinct().ToList();
        _kinds = [.. question.Rows.Select(row => kinds.IndexOf(row))];
        var until = OccasionSet.Of(Enumerable.Range(0, end + 1), question.Occasions);
        _begin = new(
            [.. question.Rows.Select(row => Freedom.Of(row, question.Occasions).Cut((_, set) => set.And(until), question.Occasions))],
            [.. _products.Select(row => new bool[row.Length])], [.. names.Select(_ => OccasionSet.None(question.Occasions))],
            new SessionLoad[question.Occasions], new SessionLoad[question.Occasions],
            [.. question.Rows.Select(row => OccasionSet.Of(Enumerable.Range(0, row.TakenUntil + 1), question.Occasions))]);
    }

    public int Bound => SessionBound.Of(_question, _products, _begin);

    /// <summary>The last search ended before it had looked at everything.</summary>
    public bool WasCutOff => _left < 0;

    /// <summary>With any number of sessions. Where the search is cut off, one row is placed after the other.</summary>
    /// <inheritdoc cref="Find"/>
    public int[][]? Any() => Find(int.MaxValue) ?? (WasCutOff ? InTurn() : null);

    /// <returns>For each row the occasions of its coats; null when there is none, or none was found
    /// before the search was cut off.</returns>
    public int[][]? Find(int sessions)
    {
        _left = _most;
        return Go(_begin, sessions);
    }

    /// <summary>Each row as a whole, in sessions that are made where it can join them, else as soon as can be: what dries is
    /// out of the way before the next.</summary>
    private int[][]? InTurn()
    {
        var branch = _begin;
        for (var row = 0; row < _products.Length; row++)
        {
            if (Placed(branch, row, 0) is not { } next)
                return null;
            branch = next;
        }

        return [.. branch.Rows.Select(one => Enumerable.Range(0, one.Count).Select(i => one[i].First).ToArray())];
    }

    private SessionBranch? Placed(SessionBranch branch, int row, int coat)
    {
        if (coat == _products[row].Length)
            return branch;
        var made = branch.Made[_products[row][coat]];
        foreach (var occasion in branch.Rows[row][coat].All().Where(one => branch.Fits(_question, row, coat, one))
            .OrderByDescending(made.Has).ThenBy(one => one))
        {
            var next = branch.With(_question, row, coat, _products[row][coat], occasion);
            if (!next.IsDead && Placed(next, row, coat + 1) is { } placed)
                return placed;
        }

        return null;
    }

    private int[][]? Go(SessionBranch branch, int sessions)
    {
        if (--_left < 0 || branch.IsDead || branch.Made.Sum(one => one.Count) + SessionBound.Of(_question, _products, branch) > sessions)
            return null;
        if (branch.MostUrgent is not var (row, coat))
            return [.. branch.Rows.Select(one => Enumerable.Range(0, one.Count).Select(i => one[i].First).ToArray())];
        var made = branch.Made[_products[row][coat]];
        foreach (var occasion in branch.Rows[row][coat].All()
            .Where(one => branch.Fits(_question, row, coat, one) && (coat > 0 || IsInTurn(branch, row, one))).OrderByDescending(made.Has)
            .ThenByDescending(one => one))
        {
            if (Go(branch.With(_question, row, coat, _products[row][coat], occasion), sessions) is { } plan)
                return plan;
        }

        return null;
    }

    private bool IsInTurn(SessionBranch branch, int row, int occasion)
    {
        for (var other = 0; other < _kinds.Length; other++)
        {
            if (other != row && _kinds[other] == _kinds[row] && branch.Chosen[other][0]
                && (other < row ? branch.Rows[other][0].First < occasion : branch.Rows[other][0].First > occasion))
                return false;
        }

        return true;
    }
}
