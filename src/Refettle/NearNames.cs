namespace Refettle;

/// <summary>Names that someone may have meant.</summary>
public static class NearNames
{
    private const int Most = 3;
    private static readonly char[] _between = ['-', '.', ' '];

    /// <summary>Up to three of the names, nearest first: those that hold what was written, those of the same words in another order, one
    /// more or fewer, and those a few slips away.</summary>
    public static ValueList<string> Of(string written, IEnumerable<string> names) =>
        names.Distinct()
            .Select(name => (Name: name, Far: Far(written, name)))
            .Where(found => found.Far <= Math.Max(2, written.Length / 3))
            .OrderBy(found => found.Far).ThenBy(found => found.Name, StringComparer.Ordinal)
            .Take(Most).Select(found => found.Name).ToValueList();

    /// <summary><c>Did you mean a, b or c?</c>, or the fallback when nothing is near.</summary>
    public static string Ask(string written, IEnumerable<string> names, string otherwise)
    {
        var near = Of(written, names);
        return near.Count switch
        {
            0 => otherwise,
            1 => $"Did you mean {near[0]}?",
            _ => $"Did you mean {string.Join(", ", near.Take(near.Count - 1))} or {near[near.Count - 1]}?",
        };
    }

    private static int Far(string written, string name)
    {
        if (written.Length > 2 && name.Contains(written, StringComparison.OrdinalIgnoreCase))
            return 1;
        if (WordsApart(written, name) is { } words)
            return 1 + words;
        if (Math.Abs(written.Length - name.Length) > Math.Max(2, written.Length / 3))
            return int.MaxValue;
        return Slips(written.ToLowerInvariant(), name.ToLowerInvariant());
    }

    /// <summary>How many words one has beyond those of the other; null where each has some of its own,
    /// or one alone is all they share.</summary>
    private static int? WordsApart(string written, string name)
    {
        var (asked, own) = (Words(written), Words(name));
        return Math.Min(asked.Count, own.Count) > 1 && (asked.IsSubsetOf(own) || own.IsSubsetOf(asked))
            ? Math.Abs(asked.Count - own.Count)
            : null;
    }

    private static HashSet<string> Words(string name) =>
        [.. name.ToLowerInvariant().Split(_between, StringSplitOptions.RemoveEmptyEntries)];

    /// <summary>Letters added, left out, changed or swapped with their neighbour (optimal string alignment distance).</summary>
    private static int Slips(string from, string to)
    {
        var slips = new int[from.Length + 1, to.Length + 1];
        for (var i = 0; i <= from.Length; i++)
            slips[i, 0] = i;
        for (var j = 0; j <= to.Length; j++)
            slips[0, j] = j;
        for (var i = 1; i <= from.Length; i++)
        {
            for (var j = 1; j <= to.Length; j++)
            {
                var change = slips[i - 1, j - 1] + (from[i - 1] == to[j - 1] ? 0 : 1);
                slips[i, j] = Math.Min(change, Math.Min(slips[i - 1, j], slips[i, j - 1]) + 1);
                if (i > 1 && j > 1 && from[i - 1] == to[j - 2] && from[i - 2] == to[j - 1])
                    slips[i, j] = Math.Min(slips[i, j], slips[i - 2, j - 2] + 1);
            }
        }

        return slips[from.Length, to.Length];
    }
}
