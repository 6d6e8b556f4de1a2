namespace Refettle.QuickLine;

/// <summary>Decides what a line tells of by the words that are no names.</summary>
internal static class KindJudge
{
    /// <summary>The kinds it may be, the likeliest first; a note is always among them, before work that is said
    /// to be not done or still ahead.</summary>
    /// <param name="words">The line's words as <see cref="LineWords.Of"/> gives them.</param>
    public static List<LineKind> Of(IReadOnlyList<string> words)
    {
        var kinds = new List<LineKind>();
        if (IsHeight(words))
            kinds.Add(LineKind.Height);
        if (words.Count > 0 && KindWords.IsReminder(words[0]))
            return [.. kinds, LineKind.Note];
        if (words.Any(KindWords.IsTight))
            kinds.Add(LineKind.Tightened);
        if (IsBack(words))
            kinds.Add(LineKind.Back);
        if (IsTry(words))
            kinds.Add(LineKind.Try);
        if (IsDone(words) && !IsFinding(words))
            kinds.Add(LineKind.Done);
        if (IsFinding(words))
            kinds.Add(LineKind.Finding);
        if (IsDone(words))
            kinds.Add(LineKind.Done);
        return [.. kinds.Append(LineKind.Note).Distinct().OrderBy(kind => IsDenied(kind, words))];
    }

    private static bool IsDenied(LineKind kind, IReadOnlyList<string> words)
    {
        var place = words.ToList().FindIndex(word => kind switch
        {
            LineKind.Tightened => KindWords.IsTight(word),
            LineKind.Back => KindWords.IsFitting(word) || word == "back",
            LineKind.Done => KindWords.IsUndoing(word) || KindWords.IsRemoving(word),
            _ => false,
        });
        return place >= 0 && (Denial.Of(words, place) || (kind == LineKind.Tightened && words.Take(place).Contains("need")));
    }

    /// <summary>Whether the words rather mean a joint or a part.</summary>
    public static Leaning Lean(LineKind kind, IReadOnlyList<string> words) => kind switch
    {
        LineKind.Try or LineKind.Tightened => Leaning.Joints,
        LineKind.Finding => Leaning.Parts,
        LineKind.Done when words.Any(KindWords.IsUndoing) => Leaning.Joints,
        _ => words.Any(KindWords.IsFastener) ? Leaning.Joints : Leaning.Parts,
    };

    private static bool IsHeight(IReadOnlyList<string> words) =>
        (words.Contains("height") || (words.Contains("arch") && words.Contains("hub"))) && LineFigures.Height(words) is not null;

    private static bool IsBack(IReadOnlyList<string> words) => words.Any(KindWords.IsFitting)
        || (words.Contains("back") && (words.Contains("put") || Follows(words, "back", "on") || Follows(words, "back", "in")));

    /// <summary>A word of trying with a fastener, or without any word of condition; or a stuck fastener.</summary>
    private static bool IsTry(IReadOnlyList<string> words)
    {
        var fastener = words.Any(KindWords.IsFastener);
        var trying = words.Any(word => KindWords.IsTrying(word) && (fastener || word is not "cut")) || Came(words);
        if (fastener && words.Contains("not") && words.Any(word => word is "will" or "would" or "did" or "does"))
            return true;
        return (trying && (fastener || !words.Any(KindWords.Condition.Contains) || words.Contains("held")))
            || (fastener && words.Any(KindWords.IsStuck));
    }

    private static bool IsDone(IReadOnlyList<string> words) => words.Any(KindWords.IsUndoing) || words.Any(KindWords.IsRemoving);

    private static bool IsFinding(IReadOnlyList<string> words) => words.Any(KindWords.Condition.Contains);

    private static bool Came(IReadOnlyList<string> words) => words.Contains("came") || words.Contains("wont") || words.Contains("won");

    private static bool Follows(IReadOnlyList<string> words, string first, string then) =>
        Enumerable.Range(0, words.Count - 1).Any(place => words[place] == first && words[place + 1] == then);
}
