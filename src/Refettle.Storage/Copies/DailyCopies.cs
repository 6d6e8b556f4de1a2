using System.Globalization;

namespace Refettle.Storage.Copies;

/// <summary>One copy of the logbook a day, in the folder <c>copies</c> beside it; old ones go by <see cref="Rotation"/>.</summary>
/// <remarks>They lie on the same disk: they help after a mistake, not after a broken disk. For that, back up to another one.</remarks>
public static class DailyCopies
{
    private const string Form = "yyyy-MM-dd";

    /// <summary>Where the copies of a logbook are.</summary>
    public static string Folder(string logbook) => Path.Combine(Path.GetDirectoryName(Path.GetFullPath(logbook))!, "copies");

    /// <summary>Makes today's copy when there is none yet, then lets old ones go.</summary>
    /// <returns>The new copy; null when today had one.</returns>
    public static Result<string?> Make(LogbookStore logbook, TimeProvider clock)
    {
        try
        {
            return Make(logbook, DateOnly.FromDateTime(clock.GetLocalNow().DateTime));
        }
        catch (Exception problem) when (DiskFaults.IsOfDisk(problem))
        {
            return Result<string?>.Bad(DiskFaults.Of(Folder(logbook.Path), problem));
        }
    }

    /// <summary>The copies there are, the newest first.</summary>
    public static IReadOnlyList<(DateOnly Day, string File)> Of(string logbook) => !Directory.Exists(Folder(logbook)) ? [] :
        Directory.EnumerateFiles(Folder(logbook), Prefix(logbook) + "*.db").Select(file => (Day: DayOf(logbook, file), File: file))
            .Where(copy => copy.Day is not null).Select(copy => (copy.Day!.Value, copy.File)).OrderByDescending(copy => copy.Value)
            .ToList();

    private static Result<string?> Make(LogbookStore logbook, DateOnly today)
    {
        var target = Path.Combine(Folder(logbook.Path), $"{Prefix(logbook.Path)}{today.ToString(Form, CultureInfo.InvariantCulture)}.db");
        if (File.Exists(target))
            return Result<string?>.Good(null);
        Directory.CreateDirectory(Folder(logbook.Path));
        var made = Backup.Make(logbook, target);
        if (!made.IsGood)
            return Result<string?>.Bad(made.Faults);
        Thin(logbook.Path, today);
        return Result<string?>.Good(target);
    }

    /// <summary>Copies of days to come, made while the clock was ahead, push out none of those that there are.</summary>
    private static void Thin(string logbook, DateOnly today)
    {
        var copies = Of(logbook).Where(copy => copy.Day <= today).ToList();
        var kept = Rotation.Kept(copies.Select(copy => copy.Day));
        foreach (var copy in copies.Where(copy => !kept.Contains(copy.Day)))
            File.Delete(copy.File);
    }

    private static string Prefix(string logbook) => Path.GetFileNameWithoutExtension(logbook) + "-";

    private static DateOnly? DayOf(string logbook, string file) =>
        DateOnly.TryParseExact(Path.GetFileNameWithoutExtension(file)[Prefix(logbook).Length..], Form, CultureInfo.InvariantCulture,
            DateTimeStyles.None, out var day) ? day : null;
}
