using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Refettle.Logbook;

namespace Refettle.Storage;

/// <summary>Says in words what the disk or the database refused.</summary>
internal static class DiskFaults
{
    /// <summary>Whether it is something that happens to files, and no bug of ours. A cell that should hold an identifier and does not is a
    /// matter of format to the driver.</summary>
    public static bool IsOfDisk(Exception problem) =>
        Inner(problem) is SqliteException or IOException or UnauthorizedAccessException or FormatException;

    public static Fault Of(string path, Exception problem) => Inner(problem) switch
    {
        LogbookException known => known.Fault,
        SqliteException { SqliteErrorCode: 5 or 6 } =>
            new(path, "another program holds the logbook locked", "Close the other program or wait until it is done; nothing was written."),
        SqliteException { SqliteErrorCode: 8 or 3 or 23 } =>
            new(path, "the logbook may be read but not written",
                "Make the file and its folder writable, or copy it to a disk that is; nothing was written."),
        SqliteException { SqliteErrorCode: 13 } =>
            new(path, "the disk is full", "Free some space and do it again; what was written before is safe."),
        SqliteException { SqliteErrorCode: 14 } when Directory.Exists(path) =>
            new(path, "this is a folder, not a file", "Give the file that keeps the logbooks, or a new name in that folder."),
        SqliteException { SqliteErrorCode: 14 } =>
            new(path, "the file cannot be opened", "Check that the folder exists and that you may write there."),
        SqliteException { SqliteErrorCode: 26 } =>
            new(path, "this is not a logbook, or its beginning was overwritten",
                "Check the path; leave the file as it is and restore a backup if it was a logbook."),
        SqliteException { SqliteErrorCode: 11 } or FormatException =>
            new(path, "the file is damaged", "Copy it away as it is, then restore a backup; other devices still have what they sent."),
        SqliteException sqlite =>
            new(path, $"the disk failed ({sqlite.SqliteErrorCode}/{sqlite.SqliteExtendedErrorCode}: {sqlite.Message})",
                "Check the disk; what was acknowledged before is in the file."),
        IOException full when IsOne(full, 28, 112) => Of(path, new SqliteException("", 13)),
        IOException refused when IsOne(refused, 30, 19) => Of(path, new SqliteException("", 8)),
        var other => new(path, other.Message.Replace($"{path}.partial", path, StringComparison.Ordinal).TrimEnd('.'),
            "Check the path and the rights to it."),
    };

    /// <summary>Whether it is what Unix numbers ENOSPC (28) or EROFS (30) and Windows ERROR_DISK_FULL (112) or
    /// ERROR_WRITE_PROTECT (19): .NET keeps the first as it is and the other in the low half.</summary>
    private static bool IsOne(IOException problem, int unix, int windows) =>
        problem.HResult == unix || problem.HResult == (unchecked((int)0x80070000) | windows);

    /// <summary>What the disk or the database said, under what was wrapped around it.</summary>
    public static Exception Inner(Exception problem) =>
        problem is DbUpdateException or InvalidOperationException && problem.InnerException is { } inner ? Inner(inner) : problem;
}
