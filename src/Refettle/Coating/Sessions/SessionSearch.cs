namespace Refettle.Coating.Sessions;

/// <summary>Looks for a plan with no more than so many sessions and no coat after an occasion. Exhaustive unless cut off.</summary>
/// <remarks>With a session for every coat the first choices always do, so it may make as many as there are coats: every question is answered.</remarks>
internal sealed class SessionSearch
{
    private readonly int _occasions;
    private readonly int _most;
    private readonly int[][] _products;
    private readonly Freedom[] _rows;
    private readonly OccasionSet[] _none;
    private int _left;

    public SessionSearch(SessionQuestion question, int end, int most)
    {
        (_occasions, _most) = (question.Occasions, Math.Max(most, question.Rows.Sum(row => row.Coats.Count) + 1));
        var names = question.Rows.SelectMany(row => row.Coats).Select(coat => coat.Product).Distinct().ToList();
        _products = [.. question.Rows.Select(row => row.Coats.Select(coat => names.IndexOf(coat.Product)).ToArray())];
        var until = OccasionSet.Of(Enumerable.Range(0, end + 1), _occasions);
        _rows = [.. question.Rows.Select(row => Freedom.Of(row, _occasions).Cut((_, set) => set.And(until), _occasions))];
        _none = [.. names.Select(_ => OccasionSet.None(_occasions))];
    }

    public int Bound => SessionBound.Of(_rows, _products, _none);

    /// <summary>The last search ended before it had looked at everything.</summary>
    public bool WasCutOff => _left < 0;

    /// <returns>For each row the occasions of its coats; null when there is none, or none was found before the search was cut off.</returns>
    public int[][]? Find(int sessions)
    {
        _left = _most;
        return _rows.Any(row => row.IsEmpty) ? null : Go(_rows, [.. _products.Select(row => new bool[row.Length])], _none, sessions);
    }

    private int[][]? Go(Freedom[] rows, bool[][] chosen, OccasionSet[] made, int sessions)
    {
        if (--_left < 0 || made.Sum(one => one.All().Count()) + SessionBound.Of(rows, _products, made) > sessions)
            return null;
        if (MostUrgent(rows, chosen) is not var (row, coat))
            return [.. rows.Select(one => Enumerable.Range(0, one.Count).Select(i => one[i].First).ToArray())];
        var (product, open) = (_products[row][coat], rows[row][coat]);
        foreach (var occasion in open.All().OrderByDescending(one => made[product].Has(one)).ThenByDescending(one => one))
        {
            var next = rows[row].Cut((i, set) => i == coat ? OccasionSet.None(_occasions).With(occasion) : set, _occasions);
            if (Go(With(rows, row, next), With(chosen, row, Mark(chosen[row], coat)), With(made, product, made[product].With(occasion)), sessions) is { } plan)
                return plan;
        }

        return null;
    }

    private static (int Row, int Coat)? MostUrgent(Freedom[] rows, bool[][] chosen)
    {
        ((int, int)? urgent, var end) = (null, int.MaxValue);
        for (var row = 0; row < rows.Length; row++)
        {
            for (var coat = 0; coat < chosen[row].Length; coat++)
            {
                if (!chosen[row][coat] && rows[row][coat].Last < end)
                    (urgent, end) = ((row, coat), rows[row][coat].Last);
            }
        }

        return urgent;
    }

    private static T[] With<T>(T[] items, int at, T item)
    {
        var copy = (T[])items.Clone();
        copy[at] = item;
        return copy;
    }

    private static bool[] Mark(bool[] row, int coat) => With(row, coat, true);
}
