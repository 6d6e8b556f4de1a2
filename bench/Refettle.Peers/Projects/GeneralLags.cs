using System.Globalization;
using Refettle.Timeline;

namespace Refettle.Peers.Projects;

/// <summary>The <c>.sch</c> form of ProGen/max (Kolisch, Schwindt and Sprecher, 1999): lags from start to start; one below 0 on an arc
/// back is the upper end of the lag the other way.</summary>
internal static class GeneralLags
{
    public static Project Parse(string text)
    {
        var rows = text.Split('\n')
            .Select(line => line.Replace("[", "", StringComparison.Ordinal).Replace("]", " ", StringComparison.Ordinal))
            .Select(line => line.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).Where(words => words.Length > 0)
            .Select(words => words.Select(word => int.Parse(word, CultureInfo.InvariantCulture)).ToArray()).ToList();
        var (count, resources) = (rows[0][0] + 2, rows[0][1]);
        if (rows.Count < 2 * count + 2)
            throw new FormatException($"{count} activities are announced, there are only {rows.Count} lines");
        var lags = rows.Skip(1).Take(count).SelectMany(row => Enumerable.Range(0, row[2])
            .Select(k => new Lag(row[0], row[3 + k], row[3 + row[2] + k], null, Anchor.Start))).ToValueList();
        var activities = rows.Skip(1 + count).Take(count)
            .Select(row => new Activity($"{row[0]}", row[2], row.Skip(3).Take(resources).ToValueList())).ToValueList();
        return new(activities,
            rows[1 + 2 * count].Take(resources).Select((capacity, r) => new Resource($"R{r + 1}", capacity)).ToValueList(), lags);
    }
}
