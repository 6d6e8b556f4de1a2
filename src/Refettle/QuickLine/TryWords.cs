namespace Refettle.QuickLine;

/// <summary>What a line says of a try: by which rung of the ladders, with what outcome.</summary>
internal static class TryWords
{
    /// <summary>The rung's name in the ladders that come with the program; the last method said counts, for it decided.</summary>
    private static readonly (string Word, string Rung)[] Rungs =
    [
        ("soak", "soak"), ("soaked", "soak"), ("penetrant", "soak"), ("impact", "impact"), ("gun", "impact"), ("breaker", "to-and-fro"),
        ("bar", "to-and-fro"), ("fro", "to-and-fro"),
        ("hand", "by-hand"), ("induction", "induction"), ("torch", "flame"), ("flame", "flame"), ("heat", "flame"), ("heated", "flame"),
        ("puller", "puller"), ("grinder", "cut"), ("cut", "cut"),
        ("drilled", "drill"), ("drill", "drill"),
    ];

    private static readonly string[] Failures = ["not", "wont", "won", "no", "nothing", "held", "still", "stuck", "seized", "never"];

    private static readonly string[] Successes =
        ["free", "freed", "moved", "loose", "loosened", "out", "popped", "apart", "off", "turn", "undone", "drilled", "cut"];

    /// <summary>What breaks loose is whole.</summary>
    private static bool IsBroken(List<string> said) =>
        said.IndexOf("broke") is var place and >= 0 && (place + 1 == said.Count || said[place + 1] is not ("loose" or "free"));

    public static string? Rung(IReadOnlyList<string> words)
    {
        string? found = null;
        foreach (var word in words)
        {
            if (Array.Find(Rungs, rung => rung.Word == word) is { Rung: { } rung })
                found = rung == "soak" && found is not null ? found : rung;
        }

        return found;
    }

    public static bool IsSoaked(IReadOnlyList<string> words) => words.Any(word => word is "soak" or "soaked" or "soaking" or "penetrant");

    /// <summary>Null when it held.</summary>
    public static JointCondition? Becomes(IReadOnlyList<string> words)
    {
        var said = words.Where((_, place) => !Denial.JustBefore(words, place)).ToList();
        if (words.Contains("sleeve") && words.Any(word => word is "turn" or "turning" or "spin"))
            return JointCondition.TurnsWithSleeve;
        if (said.Exists(word => word is "snapped" or "sheared" or "snap") || IsBroken(said))
            return words.Contains("proud") ? JointCondition.SnappedProud : JointCondition.SnappedFlush;
        if (said.Contains("rounded"))
            return JointCondition.Rounded;
        if (words.Any(Failures.Contains) || words.Contains("bit") || words.Contains("half"))
            return null;
        return words.Any(Successes.Contains) ? JointCondition.Freed : null;
    }
}
