using Microsoft.EntityFrameworkCore;
using Refettle.Logbook;
using Refettle.Storage.Tables;

namespace Refettle.Storage;

/// <summary>Finds where this machine's next entry is attached, without reading the whole log.</summary>
internal static class Ends
{
    public static LogEnd Of(LogbookContext context, string car, string device)
    {
        var own = context.Entries.AsNoTracking()
            .Where(row => row.Car == car && row.Device == device)
            .OrderByDescending(row => row.Sequence).FirstOrDefault();
        var since = own?.Position ?? 0;
        var news = context.Entries
            .Where(row => row.Car == car && row.Position > since && row.Device != device)
            .Select(row => new { row.Device, row.Sequence, row.Id }).AsEnumerable()
            .GroupBy(row => row.Device).OrderBy(rows => rows.Key, StringComparer.Ordinal)
            .Select(rows => rows.MaxBy(row => row.Sequence)!.Id);
        return new(own?.ToEntry(), news.ToValueList());
    }
}
