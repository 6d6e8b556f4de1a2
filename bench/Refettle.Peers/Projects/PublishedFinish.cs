using System.Globalization;
using CsvHelper;
using Refettle.Timeline.Scheduling;

namespace Refettle.Peers.Projects;

/// <summary>What is published about the earliest finish of an instance.</summary>
/// <param name="Low">No schedule finishes earlier; <c>null</c> where there is no schedule at all.</param>
/// <param name="High">A schedule that finishes then is known.</param>
public readonly record struct PublishedFinish(int? Low, int? High)
{
    private bool IsImpossible => Low is null;

    /// <summary>Reads the finishes of one set from CSV with the columns <c>set</c>, <c>instance</c>, <c>best_lb</c>, <c>best_ub</c> (both
    /// empty: proven impossible), by the names of their files.</summary>
    /// <exception cref="CsvHelperException">A column is missing.</exception>
    /// <exception cref="FormatException">A number is none.</exception>
    public static IReadOnlyDictionary<string, PublishedFinish> Read(TextReader text, string set)
    {
        using var rows = new CsvReader(text, CultureInfo.InvariantCulture);
        rows.Read();
        rows.ReadHeader();
        var finishes = new Dictionary<string, PublishedFinish>();
        while (rows.Read())
        {
            if (rows.GetField("set") == set)
                finishes.Add(rows.GetField("instance")!, new(Number(rows.GetField("best_lb")), Number(rows.GetField("best_ub"))));
        }

        return finishes;
    }

    /// <summary>How an answer contradicts what is published, in words; <c>null</c> when it does not.</summary>
    public string? ContradictedBy(ScheduleAnswer answer) => (answer.Status, answer.Schedule?.Makespan) switch
    {
        (ScheduleStatus.Impossible, _) => IsImpossible ? null : $"called impossible, but a finish at {High} is published",
        (_, { } finish) when IsImpossible => $"finishes at {finish}, but is published as impossible",
        (_, { } finish) when finish < Low => $"finishes at {finish}, but {Low} is published as the earliest possible",
        (ScheduleStatus.Optimal, { } finish) when finish > High => $"proven at {finish}, but a finish at {High} is published",
        _ when answer.Bound > High => $"bound {answer.Bound}, but a finish at {High} is published",
        _ => null,
    };

    private static int? Number(string? field) => string.IsNullOrEmpty(field) ? null : int.Parse(field, CultureInfo.InvariantCulture);
}
