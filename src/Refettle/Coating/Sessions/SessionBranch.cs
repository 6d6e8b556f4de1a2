namespace Refettle.Coating.Sessions;

/// <summary>A search that has come so far.</summary>
/// <param name="Rows">What is left to each row.</param>
/// <param name="Chosen">For each row and coat whether its occasion is chosen.</param>
/// <param name="Made">For each product the occasions of its sessions.</param>
/// <param name="Taken">What goes on at each occasion.</param>
internal sealed record SessionBranch(Freedom[] Rows, bool[][] Chosen, OccasionSet[] Made, SessionLoad[] Taken)
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

    /// <summary>The same with an occasion chosen for a coat. Where it leaves others no room they lose that occasion.</summary>
    public SessionBranch With(SessionQuestion question, int row, int coat, int product, int occasion)
    {
        var only = OccasionSet.None(Taken.Length).With(occasion);
        var taken = Changed(Taken, occasion, Taken[occasion] + question.Rows[row].Load);
        var chosen = Changed(Chosen, row, Changed(Chosen[row], coat, true));
        var rows = Changed(Rows, row, Rows[row].Cut((i, set) => i == coat ? only : set, Taken.Length));
        for (var other = 0; other < rows.Length && !question.Room.IsEndless; other++)
        {
            var coats = chosen[other];
            if (!question.Room.Holds(taken[occasion] + question.Rows[other].Load))
                rows[other] = rows[other].Cut((i, set) => coats[i] ? set : set.Without(occasion), Taken.Length);
        }

        return new(rows, chosen, Changed(Made, product, Made[product].With(occasion)), taken);
    }

    private static T[] Changed<T>(T[] items, int at, T item)
    {
        var copy = (T[])items.Clone();
        copy[at] = item;
        return copy;
    }
}
