namespace Refettle.Coating.Sessions;

/// <summary>A search that has come so far.</summary>
/// <param name="Rows">What is left to each row.</param>
/// <param name="Chosen">For each row and coat whether its occasion is chosen.</param>
/// <param name="Made">For each product the occasions of its sessions.</param>
/// <param name="Sprayed">What goes on at each occasion and did not take room from before.</param>
/// <param name="Taken">What goes on or dries at each occasion.</param>
/// <param name="Busy">For each row the occasions at which it takes room.</param>
internal sealed record SessionBranch(
    Freedom[] Rows, bool[][] Chosen, OccasionSet[] Made, SessionLoad[] Sprayed, SessionLoad[] Taken, OccasionSet[] Busy)
{
    /// <summary>Some coat has no occasion left.</summary>
    public bool IsDead => Array.Exists(Rows, row => row.IsEmpty);

    /// <summary>A coat that has one occasion left; else the one whose last occasion is nearest; null when all are chosen.</summary>
    public (int Row, int Coat)? MostUrgent
    {
        get
        {
            ((int, int)? urgent, var end) = (null, int.MaxValue);
            for (var row = 0; row < Rows.Length; row++)
            {
                for (var coat = 0; coat < Chosen[row].Length; coat++)
                {
                    if (Chosen[row][coat])
                        continue;
                    if (Rows[row][coat].Count == 1)
                        return (row, coat);
                    if (Rows[row][coat].Last < end)
                        (urgent, end) = ((row, coat), Rows[row][coat].Last);
                }
            }

            return urgent;
        }
    }

    /// <summary>Whether a coat finds room at an occasion and until it is dry.</summary>
    public bool Fits(SessionQuestion question, int row, int coat, int occasion) => question.IsRoomy
        || question.Rows[row].Coats[coat].Taken(occasion)
            .All(one => Busy[row].Has(one) || question.RoomAt(one).Holds(Taken[one] + question.Rows[row].Load));

    /// <summary>The same with an occasion chosen for a coat. Where it leaves others no room they lose that occasion.</summary>
    public SessionBranch With(SessionQuestion question, int row, int coat, int product, int occasion)
    {
        var (only, load) = (OccasionSet.None(Taken.Length).With(occasion), question.Rows[row].Load);
        var fresh = question.IsRoomy ? [] : question.Rows[row].Coats[coat].Taken(occasion).Where(one => !Busy[row].Has(one)).ToList();
        var chosen = Changed(Chosen, row, Changed(Chosen[row], coat, true));
        var rows = Changed(Rows, row, Rows[row].Cut((i, set) => i == coat ? only : set, Taken.Length));
        var next = new SessionBranch(rows, chosen, Changed(Made, product, Made[product].With(occasion)),
            Changed(Sprayed, occasion, Sprayed[occasion] + (question.Rows[row].TakenUntil < occasion ? load : default)),
            [.. Taken.Select((one, at) => fresh.Contains(at) ? one + load : one)],
            Changed(Busy, row, fresh.Aggregate(Busy[row], (set, one) => set.With(one))));
        for (var other = 0; other < rows.Length && fresh.Count > 0; other++)
            next.Cut(question, other, fresh);
        return next;
    }

    /// <summary>Takes from a row the occasions at which it found room no longer.</summary>
    private void Cut(SessionQuestion question, int row, List<int> fresh)
    {
        var lost = Enumerable.Range(0, Chosen[row].Length).Select(coat => Chosen[row][coat] ? [] : Rows[row][coat].All()
            .Where(one => one <= fresh[^1] && question.Rows[row].Coats[coat].Taken(one).Last() >= fresh[0]
                && !Fits(question, row, coat, one)).ToList()).ToList();
        if (lost.Exists(one => one.Count > 0))
            Rows[row] = Rows[row].Cut((i, set) => lost[i].Aggregate(set, (left, one) => left.Without(one)), Taken.Length);
    }

    private static T[] Changed<T>(T[] items, int at, T item)
    {
        var copy = (T[])items.Clone();
        copy[at] = item;
        return copy;
    }
}
