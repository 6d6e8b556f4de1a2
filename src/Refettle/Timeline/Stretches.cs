namespace Refettle.Timeline;

/// <summary>Rows of stretches of time.</summary>
public static class Stretches
{
    /// <summary>The minutes that lie in both.</summary>
    public static ValueList<Window> Both(ValueList<Window> one, ValueList<Window> other)
    {
        var both = new List<Window>();
        for (int i = 0, j = 0; i < one.Count && j < other.Count;)
        {
            var (start, end) = (Math.Max(one[i].Start, other[j].Start), Math.Min(one[i].End, other[j].End));
            if (start < end)
                both.Add(new(start, end));
            _ = one[i].End <= other[j].End ? i++ : j++;
        }

        return both.ToValueList();
    }

    /// <summary>The minutes from 0 to <paramref name="end"/> that lie in none of the windows, which are in order and apart.</summary>
    public static ValueList<Window> Without(ValueList<Window> windows, int end)
    {
        var starts = windows.Select(window => window.End).Prepend(0);
        var ends = windows.Select(window => window.Start).Append(end);
        return Joined(starts.Zip(ends, (start, stop) => new Window(start, stop)), 0, end);
    }

    /// <summary>In order and apart, those that touch or overlap made one, cut to a stretch.</summary>
    public static ValueList<Window> Joined(IEnumerable<Window> windows, int from = int.MinValue, int until = int.MaxValue)
    {
        var joined = new List<Window>();
        foreach (var window in windows.Select(window => new Window(Math.Max(from, window.Start), Math.Min(until, window.End)))
            .Where(window => window.Start < window.End).OrderBy(window => window.Start))
        {
            if (joined.Count > 0 && window.Start <= joined[^1].End)
                joined[^1] = new(joined[^1].Start, Math.Max(joined[^1].End, window.End));
            else
                joined.Add(window);
        }

        return joined.ToValueList();
    }
}
