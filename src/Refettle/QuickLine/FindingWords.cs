namespace Refettle.QuickLine;

/// <summary>The word of a part's own scale that a line says, where it plainly says one.</summary>
internal static class FindingWords
{
    /// <summary>What is said, and the words of the scales that it can be. From memory; what has no plain
    /// word of the scale stays a note.</summary>
    private const string Table = """
        leak leaking leaky drip dripping: leaks|drips
        weep weeping seep seeping damp wet: damp|film
        torn tear split ripped: torn
        crack cracked: cracked
        holed hole: holes
        play sloppy: play
        rough rumble rumbling notchy grating: rough
        bent: bent
        pitted: pitted
        broken: broken
        scored: scored
        lip: lipped
        thin: thin
        worn finished: worn
        soaked: soaked
        stretched: stretched
        rounded: rounded
        dented dent: dented
        hard brittle: hard
        bulging bulged swollen: bulged
        """;

    private static readonly Dictionary<string, string[]> Scale = Table.Split('\n', StringSplitOptions.TrimEntries)
        .Select(line => line.Split(": "))
        .SelectMany(line => line[0].Split(' ').Select(said => (Said: said, Words: line[1].Split('|'))))
        .ToDictionary(pair => pair.Said, pair => pair.Words);

    /// <summary><c>Hard to reach</c> is no hardened rubber.</summary>
    private static bool IsToDo(IReadOnlyList<string> words, int place) =>
        words[place] == "hard" && place + 1 < words.Count && words[place + 1] == "to";

    /// <summary>Null when the line says no word of a scale for this part, or denies it; of several
    /// the worst, for that one decides.</summary>
    public static (string Scale, string Word)? Of(Part part, IReadOnlyList<string> words)
    {
        var said = words.Where((word, place) => Scale.ContainsKey(word) && !Denial.Of(words, place) && !IsToDo(words, place))
            .SelectMany(word => Scale[word]).ToHashSet();
        return ConditionScales.For(part)
            .SelectMany(scale => scale.Words.Where(word => said.Contains(word.Word)).Select(word => (scale.Id, word.Word, word.How)))
            .OrderByDescending(found => found.How).Select(found => ((string, string)?)(found.Id, found.Word)).FirstOrDefault();
    }
}
