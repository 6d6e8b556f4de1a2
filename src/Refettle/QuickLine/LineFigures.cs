namespace Refettle.QuickLine;

/// <summary>The figures of a line: pieces needed, minutes, torque, height.</summary>
internal static class LineFigures
{
    private const int MostNeeded = 200;
    private static readonly HashSet<string> Needing = ["need", "order", "want", "buy"];
    private static readonly HashSet<string> MinuteWords = ["min", "minute"];
    private static readonly HashSet<string> HourWords = ["hour", "hr", "h"];
    private static readonly HashSet<string> TorqueWords = ["nm", "newton", "newtonmetre", "newtonmeter"];

    public static int? Need(IReadOnlyList<string> words)
    {
        var place = Place(words, Needing);
        if (place < 0)
            return null;
        for (var i = place + 1; i <= Math.Min(place + 2, words.Count - 1); i++)
        {
            if (NumberWords.At(words, i) is { } number && number.Value is >= 1 and <= MostNeeded
                && number.Value == Math.Truncate(number.Value) && !IsMeasure(words, i + number.Words))
                return (int)number.Value;
        }

        return place + 1 < words.Count && words[place + 1] is "a" or "an" ? 1 : null;
    }

    /// <summary>"Need 20 minutes" asks for no pieces.</summary>
    private static bool IsMeasure(IReadOnlyList<string> words, int place) =>
        place < words.Count
        && (MinuteWords.Contains(words[place]) || TorqueWords.Contains(words[place]) || words[place] is "mm" or "hour" or "litre" or "day");

    /// <summary>Hours and minutes together; nothing where the hours are not a plain number (<c>one and a half hours</c>).</summary>
    public static Minutes? Took(IReadOnlyList<string> words)
    {
        var hours = Place(words, HourWords) < 0 ? 0 : words.Contains("half") || words.Contains("quarter") ? null : Before(words, HourWords);
        return (hours * 60) + (Before(words, MinuteWords) ?? 0) is { } minutes and > 0 and <= Minutes.Max ? new Minutes(minutes) : null;
    }

    /// <summary>The number before the unit; without a unit the one that a line ends with (<c>torqued to 110</c>). Of any other number it is
    /// not plain that it is a torque.</summary>
    public static NewtonMetres? Torque(IReadOnlyList<string> words)
    {
        var value = Before(words, TorqueWords) ?? AtEnd(words);
        return value is > 0 and <= 5000 ? new NewtonMetres(value.Value) : null;
    }

    private static decimal? AtEnd(IReadOnlyList<string> words)
    {
        var place = Enumerable.Range(0, words.Count)
            .FirstOrDefault(place => NumberWords.At(words, place) is { } number && place + number.Words == words.Count);
        return place > 0 && words[place - 1] is "torqued" or "tightened" or "to" or "at"
            && NumberWords.At(words, place) is { Value: >= 3 and <= 1000 } last ? last.Value : null;
    }

    /// <summary>A number that can be the height of a wheel arch in millimetres.</summary>
    public static Millimetres? Height(IReadOnlyList<string> words) =>
        Numbers(words).Where(number => number is >= 100 and <= 1500).Select(number => (Millimetres?)new Millimetres(number))
            .FirstOrDefault();

    public static IEnumerable<decimal> Numbers(IReadOnlyList<string> words)
    {
        for (var i = 0; i < words.Count; i++)
        {
            if (NumberWords.At(words, i) is not { } number)
                continue;
            yield return number.Value;
            i += number.Words - 1;
        }
    }

    private static decimal? Before(IReadOnlyList<string> words, HashSet<string> units)
    {
        var place = Place(words, units);
        decimal? found = null;
        for (var i = 0; i < place; i++)
        {
            if (NumberWords.At(words, i) is not { } number)
                continue;
            if (i + number.Words == place)
                found = number.Value;
            i += number.Words - 1;
        }

        return found;
    }

    private static int Place(IReadOnlyList<string> words, HashSet<string> wanted)
    {
        for (var i = 0; i < words.Count; i++)
        {
            if (wanted.Contains(words[i]))
                return i;
        }

        return -1;
    }
}
