namespace Refettle;

/// <summary>Finds the name that was probably meant.</summary>
public static class Nearest
{
    private const int LongestCompared = 80;

    /// <summary>The name with the fewest letters inserted, dropped or changed (Levenshtein distance), at most a third of its length;
    /// null when none is near. Of equals the first in ordinal order.</summary>
    public static string? To(string name, IEnumerable<string> names)
    {
        if (name.Length > LongestCompared)
            return null;
        var most = Math.Max(1, name.Length / 3);
        string? best = null;
        foreach (var candidate in names)
        {
            var distance = Distance(name, candidate, most);
            if (distance > most || (distance == most && best is not null && string.CompareOrdinal(candidate, best) > 0))
                continue;
            (best, most) = (candidate, distance);
        }

        return best;
    }

    /// <summary>The Levenshtein distance, or some number above <paramref name="most"/> when it is more than that.</summary>
    public static int Distance(string left, string right, int most)
    {
        if (Math.Abs(left.Length - right.Length) > most)
            return most + 1;
        var row = Enumerable.Range(0, right.Length + 1).ToArray();
        for (var i = 1; i <= left.Length; i++)
        {
            var (diagonal, least) = (row[0], i);
            row[0] = i;
            for (var j = 1; j <= right.Length; j++)
            {
                var changed = diagonal + (left[i - 1] == right[j - 1] ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(changed, 1 + Math.Min(row[j], row[j - 1]));
                least = Math.Min(least, row[j]);
            }

            if (least > most)
                return most + 1;
        }

        return row[right.Length];
    }
}
