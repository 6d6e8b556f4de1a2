using System.Globalization;
using Refettle.Timeline;

namespace Refettle.Peers.Projects;

/// <summary>The <c>.sm</c> form of PSPLIB (Kolisch and Sprecher, European Journal of Operational Research 96, 1996): one mode, renewable
/// resources, each job starts when those before it are finished.</summary>
internal static class SingleMode
{
    public static Project Parse(string text)
    {
        var lines = text.Split('\n').Select(line => line.Trim()).ToList();
        var count = (int)Numbers(After(lines, "jobs"))[^1];
        var resources = Numbers(After(lines, "- renewable"))[0];
        var lags = Section(lines, "PRECEDENCE RELATIONS").Take(count)
            .SelectMany(row => row.Skip(3).Select(after => new Lag(row[0] - 1, after - 1))).ToValueList();
        var activities = Section(lines, "REQUESTS/DURATIONS").Take(count)
            .Select(row => new Activity($"{row[0]}", row[2], row.Skip(3).Take(resources).ToValueList())).ToValueList();
        var capacities = Section(lines, "RESOURCEAVAILABILITIES", "RESOURCE AVAILABILITIES").First();
        if (activities.Count != count || activities.Any(activity => activity.Demands.Count != resources))
            throw new FormatException($"{count} jobs with {resources} resources are announced, {activities.Count} found");
        return new(activities, capacities.Take(resources).Select((capacity, r) => new Resource($"R{r + 1}", capacity)).ToValueList(), lags);
    }

    private static string After(List<string> lines, string begin) =>
        lines.Find(line => line.StartsWith(begin, StringComparison.Ordinal)) is { } line ? line[(line.LastIndexOf(':') + 1)..]
            : throw new FormatException($"no line begins with '{begin}'");

    /// <summary>The rows of numbers below a heading.</summary>
    private static IEnumerable<int[]> Section(List<string> lines, params string[] headings)
    {
        var heading = lines.FindIndex(line => headings.Any(heading => line.StartsWith(heading, StringComparison.Ordinal)));
        if (heading < 0)
            throw new FormatException($"no section '{headings[0]}'");
        return lines.Skip(heading + 1).SkipWhile(line => !StartsWithDigit(line)).TakeWhile(StartsWithDigit).Select(Numbers);
    }

    private static bool StartsWithDigit(string line) => line.Length > 0 && char.IsAsciiDigit(line[0]);

    private static int[] Numbers(string line) =>
        [.. line.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).TakeWhile(word => char.IsAsciiDigit(word[0]))
            .Select(word => int.Parse(word, CultureInfo.InvariantCulture))];
}
