using Refettle.Logbook;
using Refettle.Storage.Tables;

namespace Refettle.Storage;

/// <summary>Writes this store's own entries.</summary>
internal static class Departures
{
    public static Result<ValueList<Entry>> Add(LogbookContext context, LogWriter writer, string car, List<Happening> told)
    {
        var entries = writer.Next(car, Ends.Of(context, car, writer.Device), told);
        context.Entries.AddRange(entries.Select(EntryRow.Of));
        return Result<ValueList<Entry>>.Good(entries);
    }
}
