namespace Refettle.QuickLine;

/// <summary>What a line says that is not so, or not yet: <c>not off yet</c>, <c>still to be torqued</c>, <c>no play</c>.</summary>
internal static class Denial
{
    private static readonly HashSet<string> Denying =
    [
        "not", "no", "never", "without", "cannot", "cant", "must", "should", "isn", "wasn", "aren", "weren", "didn", "doesn", "don", "hasn",
        "haven", "couldn", "wouldn", "will",
    ];

    private static readonly HashSet<string> Ahead = ["come", "be", "go", "get", "have"];

    /// <summary>Whether a word is denied by one before it, or put off by a <c>yet</c> anywhere.</summary>
    public static bool Of(IReadOnlyList<string> words, int place) =>
        words.Contains("yet")
        || Enumerable.Range(0, place)
            .Any(before => Denying.Contains(words[before]) || (words[before] == "to" && Ahead.Contains(words[before + 1])));

    /// <summary>Whether the word just before denies it: <c>not rounded</c>.</summary>
    public static bool JustBefore(IReadOnlyList<string> words, int place) => place > 0 && Denying.Contains(words[place - 1]);
}
