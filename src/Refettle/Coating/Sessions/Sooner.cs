namespace Refettle.Coating.Sessions;

/// <summary>Moves whole sessions to earlier occasions as long as every row they serve lets them.</summary>
internal static class Sooner
{
    public static int[][] Of(SessionQuestion question, int[][] plan)
    {
        var now = plan.Select(row => (int[])row.Clone()).ToArray();
        while (Sessions(question, now).Any(session => MoveForward(question, now, session)))
        {
        }

        return now;
    }

    private static List<(string Product, int Occasion)> Sessions(SessionQuestion question, int[][] plan) =>
        [.. question.Rows.SelectMany((row, i) => row.Coats.Select((coat, j) => (coat.Product, plan[i][j]))).Distinct()
            .OrderBy(session => session.Item2)];

    private static bool MoveForward(SessionQuestion question, int[][] plan, (string Product, int Occasion) session)
    {
        for (var earlier = 0; earlier < session.Occasion; earlier++)
        {
            var moved = question.Rows
                .Select((row,
                    i) => row.Coats
                        .Select((coat, j) => coat.Product == session.Product && plan[i][j] == session.Occasion ? earlier : plan[i][j])
                        .ToArray()).ToArray();
            if (!question.Rows.Select((row, i) => SessionCheck.Keeps(row, moved[i])).All(kept => kept)
                || !SessionCheck.HaveRoom(question, moved))
                continue;
            moved.CopyTo(plan, 0);
            return true;
        }

        return false;
    }
}
