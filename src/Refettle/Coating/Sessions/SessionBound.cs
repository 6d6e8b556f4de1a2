namespace Refettle.Coating.Sessions;

/// <summary>How many sessions are still needed at least.</summary>
internal static class SessionBound
{
    /// <summary>Coats of one product whose spans have no occasion in common need sessions of their
    /// own, and so do coats of one product in one row, and those that do not fit in at one time. The first is counted as the greatest
    /// number of spans that are apart from each other (earliest end first), without the coats that a session made before can serve; the
    /// last as the room that is missing beside what goes on in the sessions made before; what only dries there is left out, since a part
    /// may be coated again where it dries.</summary>
    public static int Of(SessionQuestion question, int[][] products, SessionBranch branch) => Enumerable.Range(0, branch.Made.Length)
        .Sum(product => Math.Max(Crowded(question, products, product, branch),
            Math.Max(Apart(products, product, branch), InOneRow(products, product, branch.Made[product]))));

    private static int Apart(int[][] products, int product, SessionBranch branch)
    {
        var spans = new List<(int First, int Last)>();
        for (var row = 0; row < products.Length; row++)
        {
            for (var coat = 0; coat < products[row].Length; coat++)
            {
                if (products[row][coat] == product && !branch.Rows[row][coat].Meets(branch.Made[product]))
                    spans.Add((branch.Rows[row][coat].First, branch.Rows[row][coat].Last));
            }
        }

        spans.Sort((one, two) => one.Last.CompareTo(two.Last));
        var (count, end) = (0, -1);
        foreach (var (first, last) in spans)
            (count, end) = first > end ? (count + 1, last) : (count, end);

        return count;
    }

    private static int Crowded(SessionQuestion question, int[][] products, int product, SessionBranch branch)
    {
        if (question.IsRoomy)
            return 0;
        var rest = default(SessionLoad);
        for (var row = 0; row < products.Length; row++)
        {
            for (var coat = 0; coat < products[row].Length; coat++)
                rest += products[row][coat] == product && !branch.Chosen[row][coat] && question.Rows[row].TakenUntil < 0
                    ? question.Rows[row].Load
                    : default;
        }

        return question.MostRoom.Needed(rest,
            branch.Made[product].All()
                .Aggregate(default(SessionLoad), (spare, one) => spare + question.RoomAt(one).Beside(branch.Sprayed[one])));
    }

    private static int InOneRow(int[][] products, int product, OccasionSet made) =>
        products.Max(row => row.Count(one => one == product)) - made.Count;
}
