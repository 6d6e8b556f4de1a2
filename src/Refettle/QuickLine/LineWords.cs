namespace Refettle.QuickLine;

/// <summary>Cuts a line or a name into comparable words.</summary>
public static class LineWords
{
    /// <summary>Words that are written apart or together: <c>hand brake</c>, <c>hand-brake</c>, <c>handbrake</c> are one.</summary>
    private static readonly HashSet<string> Together =
    [
        "handbrake", "halfshaft", "propshaft", "driveshaft", "backplate", "downpipe", "headlamp", "headlight", "tailgate", "windscreen",
        "windshield",
        "crossmember", "glovebox", "subframe", "flywheel", "ubolt", "uj", "crankshaft", "camshaft", "headlining", "tellingtale", "sunvisor",
        "bellhousing", "locknut", "cornerfl", "tailpipe", "tailbox", "washerjet", "fusebox",
    ];

    /// <summary>Small words that say nothing of a thing.</summary>
    private static readonly HashSet<string> Empty =
    [
        "the", "a", "an", "of", "in", "on", "at", "to", "is", "it", "and", "with", "its", "for", "by", "i", "we", "my", "was", "are", "be",
        "er", "um", "okay", "ok",
        "so", "this", "that", "from", "one", "but", "there", "has", "have", "had", "very", "still", "now", "again", "then", "as", "before",
        "after", "behind", "into", "up", "all",
    ];

    /// <summary>The words in order, small, without plural endings; corners are spelt out (<c>rl</c> is rear left).</summary>
    public static List<string> Of(string text)
    {
        var raw = Split(text);
        var words = new List<string>(raw.Count + 2);
        for (var i = 0; i < raw.Count; i++)
        {
            if (i + 1 < raw.Count && Together.Contains(raw[i] + Stem(raw[i + 1])))
                words.Add(raw[i] + Stem(raw[++i]));
            else if (Spots.TryParse(raw[i], out var spot) && spot.IsCorner())
                words.AddRange(spot.Words().ToLowerInvariant().Split(' '));
            else
                words.Add(Stem(raw[i]));
        }

        return words;
    }

    public static bool SaysNothing(string word) => Empty.Contains(word);

    /// <summary>Letters and digits only, small.</summary>
    public static List<string> Split(string text)
    {
        var words = new List<string>();
        var start = -1;
        for (var i = 0; i <= text.Length; i++)
        {
            var isInner = i < text.Length && !IsUnitAfterNumber(text, i, start)
                && (char.IsLetterOrDigit(text[i]) || (text[i] is '.' or ',' && IsDigit(text, i - 1) && IsDigit(text, i + 1)));
            if (isInner && start < 0)
                start = i;
            else if (!isInner && start >= 0)
            {
                words.Add(text[start..i].ToLowerInvariant());
                start = i < text.Length && char.IsLetter(text[i]) ? i : -1;
            }
        }

        return words;
    }

    /// <summary>Without the ending of a plural.</summary>
    public static string Stem(string word) => word switch
    {
        { Length: > 4 } when word.EndsWith("ies", StringComparison.Ordinal) => word[..^3] + "y",
        { Length: > 4 }
            when word.EndsWith("shes", StringComparison.Ordinal) || word.EndsWith("ches", StringComparison.Ordinal)
                || word.EndsWith("xes", StringComparison.Ordinal) || word.EndsWith("sses", StringComparison.Ordinal) => word[..^2],
        { Length: > 3 } when word[^1] == 's' && word[^2] is not ('s' or 'u' or 'i') => word[..^1],
        _ => word,
    };

    /// <summary><c>110Nm</c> is a number and a unit; <c>a5</c> is one word.</summary>
    private static bool IsUnitAfterNumber(string text, int place, int start) =>
        start >= 0 && char.IsAsciiDigit(text[start]) && char.IsLetter(text[place]) && IsDigit(text, place - 1);

    private static bool IsDigit(string text, int place) => place >= 0 && place < text.Length && char.IsAsciiDigit(text[place]);
}
