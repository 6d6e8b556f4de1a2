using CsCheck;
using Refettle.Coating.Sessions;

namespace Refettle.Tests.Coating;

/// <summary>Questions of sessions small enough to try out every plan.</summary>
internal static class RandomSessions
{
    private static readonly string[] _products = ["a", "b", "c"];

    /// <summary>3 to 6 occasions, 1 to 3 rows of 1 to 3 coats; some rows cannot be kept.</summary>
    public static Gen<SessionQuestion> Gen { get; } =
        from occasions in CsCheck.Gen.Int[3, 6]
        from rows in Row(occasions).Array[1, 3]
        select new SessionQuestion(occasions, rows.ToValueList());

    public static Gen<CoatRow> Row(int occasions) =>
        from count in CsCheck.Gen.Int[1, 3]
        from coats in Coat(occasions).Array[count]
        select new CoatRow(coats.Select((coat, i) => i == 0 ? coat with { After = [] } : coat).ToValueList());

    /// <summary>Every choice of every row, tried one after the other.</summary>
    /// <returns>The fewest sessions and the earliest end among them; null when no row can be kept.</returns>
    public static (int Sessions, int End)? BruteForce(SessionQuestion question)
    {
        var rows = question.Rows.Where(row => Choices(row).Any()).ToList();
        var plans = rows.Aggregate<CoatRow, IEnumerable<int[][]>>([[]], (plans, row) => plans.SelectMany(plan => Choices(row).Select(choice => (int[][])[.. plan, choice])));
        return rows.Count == 0 ? null : plans.Min(plan => (rows.SelectMany((row, i) => row.Coats.Select((coat, j) => (coat.Product, plan[i][j]))).Distinct().Count(), plan.Max(row => row[^1])));
    }

    public static IEnumerable<int[]> Choices(CoatRow row) => row.Coats.Aggregate<CoatToCome, IEnumerable<int[]>>([[]], (choices, coat) => choices
        .SelectMany(choice => coat.May.Where(may => choice.Length == 0 || coat.After[choice[^1]].Contains(may)).Select(may => (int[])[.. choice, may])));

    private static Gen<CoatToCome> Coat(int occasions) =>
        from product in CsCheck.Gen.Int[0, 2].Select(i => _products[i])
        from may in CsCheck.Gen.Bool.Array[occasions]
        from least in CsCheck.Gen.Int[1, 2]
        from most in CsCheck.Gen.Int[1, 4]
        from hole in CsCheck.Gen.Int[0, 9]
        select new CoatToCome(product, Where(occasions, one => may[one]),
            Enumerable.Range(0, occasions).Select(before => Where(occasions, one => one - before >= least && one - before <= most && one != hole)).ToValueList());

    private static ValueList<int> Where(int occasions, Func<int, bool> wanted) => Enumerable.Range(0, occasions).Where(wanted).ToValueList();
}
