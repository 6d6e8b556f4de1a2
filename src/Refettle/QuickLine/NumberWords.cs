using System.Globalization;

namespace Refettle.QuickLine;

/// <summary>Numbers as they are written and as dictation spells them: <c>one hundred and ten</c>.</summary>
internal static class NumberWords
{
    private static readonly string[] Small =
    [
        "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen", "fourteen",
        "fifteen",
        "sixteen", "seventeen", "eighteen", "nineteen",
    ];

    private static readonly string[] Tens = ["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];

    /// <summary>The number that begins at a word, and how many words it takes; null when none does.</summary>
    public static (decimal Value, int Words)? At(IReadOnlyList<string> words, int place)
    {
        if (place >= words.Count)
            return null;
        if (Digits(words[place]) is { } written)
            return (written, 1);
        var (total, taken) = (0m, 0);
        for (var i = place; i < words.Count; i++)
        {
            if (words[i] == "hundred")
                total = Math.Max(1, total) * 100;
            else if (words[i] == "and" && taken > 0 && total >= 100 && i + 1 < words.Count && Spelt(words[i + 1]) is not null)
                continue;
            else if (Spelt(words[i]) is { } value && (taken == 0 || value < total))
                total += value;
            else
                break;
            taken = i - place + 1;
        }

        return taken == 0 ? null : (total, taken);
    }

    private static decimal? Digits(string word) =>
        decimal.TryParse(word.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value)
            ? value
            : null;

    private static int? Spelt(string word)
    {
        var small = Array.IndexOf(Small, word);
        if (small >= 0)
            return small;
        var tens = Array.IndexOf(Tens, word);
        return tens >= 0 ? (tens + 2) * 10 : null;
    }
}
