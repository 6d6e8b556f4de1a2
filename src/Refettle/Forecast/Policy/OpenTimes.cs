using Refettle.Timeline;

namespace Refettle.Forecast.Policy;

/// <summary>When a set of resources is open together, in order. Ends with a window beyond all time, so
/// that a search always finds one.</summary>
internal sealed class OpenTimes
{
    /// <summary>No finish lies here or beyond: what gets there is never finished within the windows given.</summary>
    public const int Never = 1 << 29;

    private const int Shift = 6;

    private readonly int[] _first;

    private OpenTimes(int[] starts, int[] ends, int[][] spells)
    {
        (Starts, Ends, Spells) = (starts, ends, spells);
        Longest = starts.Length == 1 ? 0 : starts.Zip(ends, (start, end) => end - start).SkipLast(1).Max();
        _first = new int[(starts.Length == 1 ? 0 : ends[^2] >> Shift) + 2];
        for (var (bucket, window) = (0, 0); bucket < _first.Length; bucket++)
        {
            while (ends[window] <= bucket << Shift)
                window++;
            _first[bucket] = window;
        }
    }

    public int[] Starts { get; }

    public int[] Ends { get; }

    /// <summary>For each window but the last, the spells (<see cref="Spells"/> of the course) that
    /// must all come about for it to be.</summary>
    public int[][] Spells { get; }

    /// <summary>Length of the longest window.</summary>
    public int Longest { get; }

    /// <summary>The first window that could be open at a time or later: none before it ends after it.</summary>
    public int From(int time) => _first[Math.Min(time >> Shift, _first.Length - 1)];

    /// <summary>The windows in which all are open.</summary>
    /// <param name="resources">One or more windowed resources.</param>
    /// <param name="firstSpell">For each of them the number of its first spell.</param>
    public static OpenTimes Of(IReadOnlyList<Resource> resources, IReadOnlyList<int> firstSpell)
    {
        var windows = resources[0].Open!.Select((window, place) => (Window: window, Spells: new[] { firstSpell[0] + place })).ToList();
        for (var i = 1; i < resources.Count; i++)
            windows = [.. Common(windows, resources[i].Open!, firstSpell[i])];
        return new(
            [.. windows.Select(window => window.Window.Start), Never],
            [.. windows.Select(window => window.Window.End), int.MaxValue],
            [.. windows.Select(window => window.Spells)]);
    }

    private static IEnumerable<(Window, int[])> Common(
        List<(Window Window, int[] Spells)> windows, ValueList<Window> others, int firstSpell)
    {
        foreach (var (window, spells) in windows)
        {
            for (var other = 0; other < others.Count; other++)
            {
                var common = new Window(Math.Max(window.Start, others[other].Start), Math.Min(window.End, others[other].End));
                if (common.Start < common.End)
                    yield return (common, [.. spells, firstSpell + other]);
            }
        }
    }
}
