namespace Refettle.Coating.Sessions;

/// <summary>How many sessions are still needed at least.</summary>
internal static class SessionBound
{
    /// <summary>Coats of one product whose spans have no occasion in common need sessions of their own, and so do coats of one product in one
    /// row. The first is counted as the greatest number of spans that are apart from each other (earliest end first), without the coats that
    /// a session made before can serve.</summary>
    /// <param name="made">For each product the occasions of sessions made before.</param>
    public static int Of(IReadOnlyList<Freedom> rows, int[][] products, OccasionSet[] made) =>
        Enumerable.Range(0, made.Length).Sum(product => Math.Max(Apart(rows, products, product, made[product]), InOneRow(products, product, made[product])));

    private static int Apart(IReadOnlyList<Freedom> rows, int[][] products, int product, OccasionSet made)
    {
        var spans = new List<(int First, int Last)>();
        for (var row = 0; row < rows.Count; row++)
        {
            for (var coat = 0; coat < products[row].Length; coat++)
            {
                if (products[row][coat] == product && !rows[row][coat].Meets(made))
                    spans.Add((rows[row][coat].First, rows[row][coat].Last));
            }
        }

        spans.Sort((one, two) => one.Last.CompareTo(two.Last));
        var (count, end) = (0, -1);
        foreach (var (first, last) in spans)
            (count, end) = first > end ? (count + 1, last) : (count, end);

        return count;
    }

    private static int InOneRow(int[][] products, int product, OccasionSet made) =>
        products.Max(row => row.Count(one => one == product)) - made.All().Count();
}
