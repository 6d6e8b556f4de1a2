namespace Refettle;

/// <summary>Finds the known name that a mistyped one most likely meant.</summary>
public static class Nearest
{
    /// <returns>The name at the least edit distance, or null when none is near (more than a third of the letters differ).</returns>
    public static string? Of(string name, IEnumerable<string> names)
    {
        var (nearest, least) = ((string?)null, Math.Max(2, name.Length / 3) + 1);
        foreach (var candidate in names)
        {
            var distance = Distance(name, candidate, least);
            if (distance < least)
                (nearest, least) = (candidate, distance);
        }

        return nearest;
    }

    /// <summary>Levenshtein distance, or <paramref name="most"/> when it is that much or more.</summary>
    private static int Distance(string left, string right, int most)
    {
        if (Math.Abs(left.Length - right.Length) >= most)
            return most;
        var row = Enumerable.Range(0, right.Length + 1).ToArray();
        for (var i = 1; i <= left.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= right.Length; j++)
            {
                var change = diagonal + (left[i - 1] == right[j - 1] ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(change, Math.Min(row[j], row[j - 1]) + 1);
            }
        }

        return Math.Min(row[^1], most);
    }
}
