using Microsoft.EntityFrameworkCore;
using Refettle.Logbook;
using Refettle.Storage.Tables;

namespace Refettle.Storage;

/// <summary>Takes in entries of other devices.</summary>
internal static class Arrivals
{
    /// <summary>How many identifiers are looked up at once.</summary>
    private const int LookUp = 500;

    /// <summary>Takes in what is sound: all of it, or none.</summary>
    /// <param name="run">Runs a change in one transaction.</param>
    public static Result<int> Take(IEnumerable<Entry> entries, Func<Func<LogbookContext, Result<int>>, Result<int>> run)
    {
        var given = entries.ToList();
        var faults = given.SelectMany(EntryCheck.Of).ToValueList();
        return faults.Count > 0 ? Result<int>.Bad(faults) : run(context => Add(context, given));
    }

    /// <returns>How many were new; faults for those that contradict what is here.</returns>
    private static Result<int> Add(LogbookContext context, List<Entry> entries)
    {
        var here = Here(context, entries);
        var faults = new List<Fault>();
        var fresh = new List<Entry>();
        foreach (var entry in entries)
        {
            if (here.TryAdd(entry.Id, entry))
                fresh.Add(entry);
            else if (here[entry.Id] != entry)
                faults.Add(Different(entry));
        }

        context.Entries.AddRange(fresh.Select(EntryRow.Of));
        return faults.Count > 0 ? Result<int>.Bad(faults) : Result<int>.Good(fresh.Count);
    }

    private static Dictionary<Guid, Entry> Here(LogbookContext context, List<Entry> entries)
    {
        var here = new Dictionary<Guid, Entry>();
        foreach (var ids in entries.Select(entry => entry.Id).Chunk(LookUp))
        {
            foreach (var row in context.Entries.AsNoTracking().Where(row => ids.Contains(row.Id)))
                here[row.Id] = row.ToEntry();
        }

        return here;
    }

    private static Fault Different(Entry entry) => new(
        $"entry {entry.Id}", $"another entry {entry.Sequence} of device {entry.Device} is here under this identifier, with other content",
        "One of the two was changed after it was written; verify both logbooks.");
}
