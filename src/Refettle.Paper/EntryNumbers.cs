namespace Refettle.Paper;

/// <summary>Numbers of entries in as few signs as they need: <c>1–3, 7</c>.</summary>
internal static class EntryNumbers
{
    /// <summary>More ranges than these are not listed one by one.</summary>
    private const int Most = 8;

    public static IEnumerable<(int First, int Last)> Ranges(IEnumerable<int> numbers)
    {
        var (first, last) = (0, -1);
        foreach (var number in numbers.Distinct().Order())
        {
            if (number == last + 1)
            {
                last = number;
                continue;
            }

            if (first > 0)
                yield return (first, last);
            (first, last) = (number, number);
        }

        if (first > 0)
            yield return (first, last);
    }

    /// <summary>The ranges that are shown, and how many entries are left after them.</summary>
    public static (List<(int First, int Last)> Shown, int More) Shortened(IEnumerable<int> numbers)
    {
        var all = Ranges(numbers).ToList();
        return all.Count <= Most ? (all, 0) : (all[..Most], all[Most..].Sum(range => range.Last - range.First + 1));
    }

    public static string Text((int First, int Last) range) => range.First == range.Last ? $"{range.First}" : $"{range.First}–{range.Last}";

    /// <summary>All in one line; empty for none.</summary>
    public static string Text(IEnumerable<int> numbers)
    {
        var (shown, more) = Shortened(numbers);
        return string.Join(", ", shown.Select(Text)) + (more > 0 ? $" and {more} more" : "");
    }
}
