using System.Security.Cryptography;
using Microsoft.Data.Sqlite;

namespace Refettle.Storage;

/// <summary>Copies a logbook to another file and back.</summary>
public static class Backup
{
    /// <summary>Writes a consistent copy while the logbook is in use. The copy is whole and on the disk
    /// when this returns a good result; a crash leaves no half copy under its name.</summary>
    /// <returns>The number of entries in the copy.</returns>
    public static Result<long> Make(LogbookStore logbook, string target)
    {
        if (Path.Exists(target))
            return Result<long>.Bad(new Fault(target, "there is a file already", "Give another name; backups are never overwritten."));
        if (NoFolder(target) is { } missing)
            return Result<long>.Bad(missing);
        try
        {
            return Result<long>.Good(Place(target, partial => Copy(logbook.Path, partial)));
        }
        catch (Exception problem) when (DiskFaults.IsOfDisk(problem))
        {
            return Result<long>.Bad(DiskFaults.Of(target, problem));
        }
    }

    /// <summary>Brings a backup back as a logbook. There must be none at the target.</summary>
    /// <remarks>The restored logbook gets a new name for this machine: what was written after the backup may live on in other devices
    /// under the old name, and two entries must never have one number.</remarks>
    /// <returns>The number of entries in it.</returns>
    public static Result<long> Restore(string backup, string target, RandomNumberGenerator random)
    {
        if (!File.Exists(backup))
            return Result<long>.Bad(new Fault(backup, "there is no backup", "Check the path."));
        if (Path.Exists(target) || Path.Exists(target + "-wal"))
            return Result<long>.Bad(new Fault(target, "there is a logbook already",
                "Move it away first (with the -wal file beside it, if any); a restore never overwrites."));
        if (NoFolder(target) is { } missing)
            return Result<long>.Bad(missing);
        try
        {
            if (Opening.Examine(backup) is { } fault)
                return Result<long>.Bad(fault);
            return Result<long>.Good(Place(target, partial => Renamed(backup, partial, random)));
        }
        catch (Exception problem) when (DiskFaults.IsOfDisk(problem))
        {
            return Result<long>.Bad(DiskFaults.Of(backup, problem));
        }
    }

    private static Fault? NoFolder(string target) =>
        Path.GetDirectoryName(Path.GetFullPath(target)) is { } folder && !Directory.Exists(folder)
        ? new(target, "its folder is not there", "Make the folder first, or give another path.")
        : null;

    /// <summary>The copy that is kept when a newer version changes the form of the file: <c>NAME.form-1</c> beside it.</summary>
    public static string BeforeChange(string path, long form) => $"{path}.form-{form}";

    /// <summary>Copies the file as it is before its form changes; a copy of the same form made by an earlier attempt is replaced.</summary>
    internal static void MakeBeforeChange(string path, long form) =>
        Place(BeforeChange(path, form), partial => Copy(path, partial), overwrite: true);

    private static long Renamed(string backup, string partial, RandomNumberGenerator random)
    {
        Copy(backup, partial);
        using var connection = Opened(partial, SqliteOpenMode.ReadWrite);
        connection.Run("DELETE FROM Identity");
        Identity.Choose(connection, random);
        return Count(connection);
    }

    private static long Copy(string from, string to)
    {
        using var source = Opened(from, SqliteOpenMode.ReadWrite);
        using var command = source.CreateCommand();
        command.CommandText = "VACUUM INTO $to";
        command.Parameters.AddWithValue("$to", to);
        command.ExecuteNonQuery();
        using var copy = Opened(to, SqliteOpenMode.ReadOnly);
        if (copy.Ask<string>("PRAGMA integrity_check") is not "ok")
            throw new IOException("The copy is not sound; the disk may be failing.");
        return Count(copy);
    }

    /// <summary>Under a name of its own until it is whole and on the disk.</summary>
    private static long Place(string target, Func<string, long> make, bool overwrite = false)
    {
        var partial = target + ".partial";
        File.Delete(partial);
        try
        {
            var count = make(partial);
            using (var file = new FileStream(partial, FileMode.Open, FileAccess.ReadWrite))
                file.Flush(flushToDisk: true);
            File.Move(partial, target, overwrite);
            return count;
        }
        finally
        {
            File.Delete(partial);
        }
    }

    private static long Count(SqliteConnection connection) => connection.Ask<long>("SELECT count(*) FROM Entries");

    private static SqliteConnection Opened(string path, SqliteOpenMode mode)
    {
        var connection =
            new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = path, Mode = mode, Pooling = false }.ConnectionString);
        connection.Open();
        return connection;
    }
}
