namespace Refettle.QuickLine;

/// <summary>Lines about bags: what is in one, where it lies, that it is empty.</summary>
internal static class BagLine
{
    private static readonly HashSet<string> Before = ["in", "into", "new", "empty", "of", "out"];

    /// <summary>Null when the line speaks of no bag.</summary>
    public static Reading? Read(string line, Func<IReadOnlyList<string>, ValueList<string>> things)
    {
        var words = LineWords.Split(line);
        for (var i = 0; i < words.Count; i++)
        {
            if (IsBag(words, i) && Code(words, i + 1) is { } code && !(IsEmptied(words) && Denial.Of(words, words.Count - 1)))
                return BagsLine.Read(words, i, line) ?? Of(words, i, i + 1 + code.Words, code.Code, line, things);
        }

        return null;
    }

    /// <summary>Dictation writes <c>back 16</c> as often as <c>bag 16</c>; only at the start, or after a word
    /// that asks for a bag, is it one.</summary>
    private static bool IsBag(List<string> words, int place) => words[place] == "bag"
        || (words[place] is "back" or "beg" or "bac" or "bags" && (place == 0 || Before.Contains(words[place - 1])));

    internal static (string Code, int Words)? Code(List<string> words, int place)
    {
        var skipped = place < words.Count && words[place] is "number" or "no" or "nr" ? 1 : 0;
        place += skipped;
        if (place >= words.Count)
            return null;
        if (NumberWords.At(words, place) is { } number && number.Value == Math.Truncate(number.Value))
            return (BagCode.Read($"{number.Value:0}"), number.Words + skipped);
        return words[place].Any(char.IsAsciiDigit) && BagCode.IsValid(words[place]) ? (words[place], 1 + skipped) : null;
    }

    private static Reading Of(
        List<string> words, int bag, int rest, string code, string line, Func<IReadOnlyList<string>, ValueList<string>> things)
    {
        var about = new Reading { Kind = LineKind.BagPacked, About = $"bag {code}", Fit = 1 };
        var after = words.Skip(rest).ToList();
        if (Whole(words, after) is { } whole)
            return whole with { About = about.About };
        var held = string.Join(' ', words.Take(bag).Concat(after)).Trim();
        return about with
        { Words = held.Length == 0 ? line.Trim() : Written(line, after, held), For = things([.. words.Take(bag), .. after]) };
    }

    /// <summary>What a line tells of a bag as a whole; null when it tells what is in it.</summary>
    internal static Reading? Whole(List<string> words, List<string> after) =>
        IsEmptied(words) || (after is ["used", "up", ..]) || (words.Contains("everything") && words.Contains("out"))
            ? new() { Kind = LineKind.BagEmptied, Fit = 1 }
            : Place(after) is { } place
            ? new() { Kind = LineKind.BagMoved, Fit = 1, Words = place }
            : null;

    private static bool IsEmptied(List<string> words) => words.Exists(word => word is "empty" or "emptied");

    /// <summary><c>is in the blue box</c>, <c>moved to shelf 2</c>, <c>lies on the bench</c>.</summary>
    private static string? Place(List<string> after)
    {
        var skip = after switch
        {
            ["is" or "are", "now", "in" or "on" or "under", ..] => 3,
            ["is" or "are", "in" or "on" or "under", ..] => 2,
            ["moved", "to", ..] => 2,
            ["lies" or "lie", "in" or "on" or "under", ..] => 2,
            ["now", "in" or "on" or "under", ..] => 2,
            ["in" or "on" or "under", _, ..] when !after.Exists(word => KindWords.IsFastener(LineWords.Stem(word))) => 1,
            _ => 0,
        };
        var place = after.Skip(skip).Where((word, i) => word != "now" || i < after.Count - skip - 1);
        return skip == 0 ? null : string.Join(' ', place);
    }

    /// <summary>As the user wrote it, where what follows the code stands in one piece at the end of the line.</summary>
    private static string Written(string line, List<string> after, string otherwise)
    {
        if (after.Count == 0)
            return otherwise;
        var place = line.LastIndexOf(after[0], StringComparison.OrdinalIgnoreCase);
        return place > 0 && LineWords.Split(line[place..]).SequenceEqual(after) ? line[place..].Trim() : otherwise;
    }
}
