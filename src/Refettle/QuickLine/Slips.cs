namespace Refettle.QuickLine;

/// <summary>Letters added, left out, changed or swapped with their neighbour (optimal string alignment distance).</summary>
internal static class Slips
{
    public static int Between(string from, string to)
    {
        if (Math.Abs(from.Length - to.Length) > 2)
            return 3;
        Span<int> before = stackalloc int[to.Length + 1];
        Span<int> last = stackalloc int[to.Length + 1];
        Span<int> row = stackalloc int[to.Length + 1];
        for (var j = 0; j <= to.Length; j++)
            last[j] = j;
        for (var i = 1; i <= from.Length; i++)
        {
            row[0] = i;
            for (var j = 1; j <= to.Length; j++)
            {
                row[j] = Math.Min(last[j - 1] + (from[i - 1] == to[j - 1] ? 0 : 1), Math.Min(last[j], row[j - 1]) + 1);
                if (i > 1 && j > 1 && from[i - 1] == to[j - 2] && from[i - 2] == to[j - 1])
                    row[j] = Math.Min(row[j], before[j - 2] + 1);
            }

            last.CopyTo(before);
            row.CopyTo(last);
        }

        return last[to.Length];
    }
}
