using NodaTime;
using Refettle.Timeline.Network;

namespace Refettle.Cli.Views;

/// <summary>Which cautions stand at which task of a list of days: each once a day, in full the first time, by
/// its first sentence on later days.</summary>
internal sealed class DayCautions
{
    private readonly HashSet<string> _told = [];
    private readonly HashSet<(LocalDate, string)> _today = [];

    /// <summary>Those of the task that were not yet told that day. Asked in the order of the list.</summary>
    public IEnumerable<string> On(LocalDate day, WorkTask task) =>
        task.Cautions.Where(caution => _today.Add((day, caution))).Select(caution => _told.Add(caution) ? caution : Short(caution))
            .ToList();

    private static string Short(string caution) =>
        caution.IndexOf(". ", StringComparison.Ordinal) is > 0 and var end ? caution[..(end + 1)] : caution;
}
