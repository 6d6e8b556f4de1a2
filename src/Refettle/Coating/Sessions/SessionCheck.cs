namespace Refettle.Coating.Sessions;

/// <summary>Holds an answer against its question, by the question's own relations alone.</summary>
public static class SessionCheck
{
    /// <summary>All that is wrong; nothing when the answer is sound. Whether fewer sessions would do is not checked.</summary>
    public static IEnumerable<string> Of(SessionQuestion question, SessionAnswer answer)
    {
        if (answer.Rows.Count != question.Rows.Count || answer.Stuck.Count != question.Rows.Count)
        {
            yield return "not every row is answered";
            yield break;
        }

        for (var i = 0; i < question.Rows.Count; i++)
        {
            if (answer.Stuck[i] is null && !Keeps(question.Rows[i], [.. answer.Rows[i]]))
                yield return $"row {i} is not kept by {answer.Rows[i]}";
            if (answer.Stuck[i] is not null && answer.Rows[i].Count > 0)
                yield return $"row {i} is stuck and planned";
        }

        if (!HaveRoom(question, [.. answer.Rows.Select(row => row.ToArray())]))
            yield return "more goes on at one time than there is room for";
        var sessions = question.Rows.SelectMany((row, i) => answer.Rows[i].Select((occasion, j) => (row.Coats[j].Product, occasion)))
            .Distinct().Count();
        if (sessions != answer.Sessions || answer.AtLeast > answer.Sessions)
            yield return $"{sessions} sessions, {answer.Sessions} said, {answer.AtLeast} at least";
    }

    /// <summary>Whether everything fits in at every occasion, until it is dry.</summary>
    /// <param name="plan">For each row the occasions of its coats.</param>
    public static bool HaveRoom(SessionQuestion question, IReadOnlyList<int[]> plan) => question.IsRoomy
        || Enumerable.Range(0, question.Occasions).All(occasion => HasRoom(question, plan, occasion));

    private static bool HasRoom(SessionQuestion question, IReadOnlyList<int[]> plan, int occasion)
    {
        var load = default(SessionLoad);
        for (var i = 0; i < question.Rows.Count; i++)
        {
            var row = question.Rows[i];
            if (row.TakenUntil < occasion && plan[i].Where((at, coat) => row.Coats[coat].Taken(at).Contains(occasion)).Any())
                load += row.Load;
        }

        return question.RoomAt(occasion).Holds(load);
    }

    /// <summary>Whether every coat has an occasion that it may have and that may follow the one before.</summary>
    public static bool Keeps(CoatRow row, ReadOnlySpan<int> occasions)
    {
        if (occasions.Length != row.Coats.Count)
            return false;
        for (var i = 0; i < occasions.Length; i++)
        {
            if (!row.Coats[i].May.Contains(occasions[i]) || (i > 0 && !row.Coats[i].After[occasions[i - 1]].Contains(occasions[i])))
                return false;
        }

        return true;
    }
}
