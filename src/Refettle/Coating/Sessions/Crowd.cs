namespace Refettle.Coating.Sessions;

/// <summary>Which rows find room beside each other.</summary>
internal static class Crowd
{
    /// <summary>All where that can be; else one after the other in the order of the question, each that
    /// fits in beside those before it.</summary>
    /// <param name="rows">Places of the rows that can be kept alone.</param>
    /// <param name="many">Choices that the search for all may make.</param>
    /// <param name="few">Choices that the search for one more may make; where they are used up a row is
    /// left out that might have fitted in.</param>
    public static List<int> Fitting(SessionQuestion question, List<int> rows, int many, int few)
    {
        var small = rows.Where(row => question.Rows[row].TakenUntil >= 0 || question.MostRoom.Holds(question.Rows[row].Load)).ToList();
        if (question.IsRoomy || small.Count == 0 || Fit(question, small, many))
            return small;
        var fit = new List<int>();
        foreach (var row in small)
        {
            if (Fit(question, [.. fit, row], few))
                fit.Add(row);
        }

        return fit;
    }

    private static bool Fit(SessionQuestion question, IEnumerable<int> rows, int most) =>
        new SessionSearch(question with { Rows = rows.Select(row => question.Rows[row]).ToValueList() }, question.Occasions - 1, most)
            .Any() is not null;
}
