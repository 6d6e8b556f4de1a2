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
    /// <returns>The fewest sessions and the earliest end among them; null when no row can be kept, or not all together.</returns>
    public static (int Sessions, int End)? BruteForce(SessionQuestion question)
    {
        var rows = question.Rows.Where(row => Choices(row).Any()).ToList();
        var plans = rows.Aggregate<CoatRow, IEnumerable<int[][]>>([[]],
            (plans, row) => plans.SelectMany(plan => Choices(row).Select(choice => (int[][])[.. plan, choice])));
        return rows.Count == 0 ? null : plans.Where(plan => Fits(question, rows, plan))
            .Min(plan => ((int, int)?)(rows.SelectMany((row, i) => row.Coats.Select((coat, j) => (coat.Product, plan[i][j]))).Distinct()
                .Count(), plan.Max(row => row[^1])));
    }

    /// <summary>The same questions with room for 1 to 4 pieces, sometimes also for 2 to 5 m², and rows of
    /// 1 or 2 pieces and 0 to 2.5 m².</summary>
    public static Gen<SessionQuestion> Crowded { get; } =
        from question in Gen
        from pieces in CsCheck.Gen.Int[1, 4]
        from area in CsCheck.Gen.Int[2, 9]
        from loads in CsCheck.Gen.Select(CsCheck.Gen.Int[1, 2], CsCheck.Gen.Int[0, 5]).Array[3]
        select question with
        {
            Room = new(pieces, area < 6 ? area : null),
            Rows = question.Rows.Select((row, i) => row with { Load = new(loads[i].Item1, loads[i].Item2 / 2m) }).ToValueList(),
        };

    /// <summary>The same, with room that is another at each occasion, coats that take room for 0 to 2 occasions more, and
    /// rows that take some at the begin.</summary>
    public static Gen<SessionQuestion> Drying { get; } =
        from question in Crowded
        from rooms in CsCheck.Gen.Int[0, 4].Array[6]
        from dry in CsCheck.Gen.Int[0, 2].Array[9]
        from begun in CsCheck.Gen.Int[-3, 1].Array[3]
        select question with
        {
            Rooms = rooms[..question.Occasions].Select(pieces => new SessionRoom(pieces, question.Room.SquareMetres)).ToValueList(),
            Rows = question.Rows.Select((row, i) => row with
            {
                TakenUntil = Math.Max(-1, begun[i]),
                Coats = row.Coats
                    .Select((coat, j) => coat with
                    {
                        TakesUntil = Enumerable.Range(0, question.Occasions)
                            .Select(one => Math.Min(question.Occasions - 1, one + dry[(3 * i) + j])).ToValueList()
                    }).ToValueList(),
            }).ToValueList(),
        };

    /// <summary>The places of the rows that can be kept, taken one after the other in their order, each that some plan has room for beside
    /// those before; all where that can be.</summary>
    public static ValueList<int> Fitting(SessionQuestion question) =>
        Enumerable.Range(0, question.Rows.Count).Where(i => Choices(question.Rows[i]).Any())
        .Aggregate(new List<int>(), (kept, i) => BruteForce(Only(question, [.. kept, i])) is null ? kept : [.. kept, i]).ToValueList();

    public static SessionQuestion Only(SessionQuestion question, IEnumerable<int> rows) =>
        question with { Rows = rows.Select(i => question.Rows[i]).ToValueList() };

    private static bool Fits(SessionQuestion question, List<CoatRow> rows, int[][] plan)
    {
        for (var occasion = 0; occasion < question.Occasions; occasion++)
        {
            var (pieces, area, room) = (0, 0m, question.Rooms.Count > 0 ? question.Rooms[occasion] : question.Room);
            for (var i = 0; i < rows.Count; i++)
            {
                var isThere = false;
                for (var j = 0; j < plan[i].Length; j++)
                    isThere |= occasion >= plan[i][j]
                        && occasion <= (rows[i].Coats[j].TakesUntil.Count == 0 ? plan[i][j] : rows[i].Coats[j].TakesUntil[plan[i][j]]);
                if (isThere && occasion > rows[i].TakenUntil)
                    (pieces, area) = (pieces + rows[i].Load.Pieces, area + rows[i].Load.SquareMetres);
            }

            if (pieces > (room.Pieces ?? int.MaxValue) || area > (room.SquareMetres ?? decimal.MaxValue))
                return false;
        }

        return true;
    }

    public static IEnumerable<int[]> Choices(CoatRow row) =>
        row.Coats.Aggregate<CoatToCome, IEnumerable<int[]>>([[]], (choices, coat) => choices
        .SelectMany(choice => coat.May.Where(may => choice.Length == 0 || coat.After[choice[^1]].Contains(may))
            .Select(may => (int[])[.. choice, may])));

    private static Gen<CoatToCome> Coat(int occasions) =>
        from product in CsCheck.Gen.Int[0, 2].Select(i => _products[i])
        from may in CsCheck.Gen.Bool.Array[occasions]
        from least in CsCheck.Gen.Int[1, 2]
        from most in CsCheck.Gen.Int[1, 4]
        from hole in CsCheck.Gen.Int[0, 9]
        select new CoatToCome(product, Where(occasions, one => may[one]),
            Enumerable.Range(0, occasions)
                .Select(before => Where(occasions, one => one - before >= least && one - before <= most && one != hole)).ToValueList());

    private static ValueList<int> Where(int occasions, Func<int, bool> wanted) =>
        Enumerable.Range(0, occasions).Where(wanted).ToValueList();
}
