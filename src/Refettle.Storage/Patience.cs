using Microsoft.Data.Sqlite;

namespace Refettle.Storage;

/// <summary>Waits for a logbook that another process writes into. SQLite gives turns to whoever asks at the right moment, so
/// one that writes without a pause on a slow disk can keep others out for longer than one wait: as long as the files change
/// somebody gets on, and waiting goes on.</summary>
/// <param name="path">The logbook.</param>
internal sealed class Patience(string path)
{
    /// <summary>Twelve waits of five seconds: after a minute it is said, whoever gets on.</summary>
    private const int MostWaits = 12;

    private const int Busy = 5;

    private const int Locked = 6;

    /// <summary>Does something that may find the logbook locked, and does it again while others get on with theirs.</summary>
    /// <param name="act">Leaves nothing behind when it fails.</param>
    public T While<T>(Func<T> act)
    {
        for (var waits = 1; ; waits++)
        {
            var before = Stamps();
            try
            {
                return act();
            }
            catch (Exception problem) when (waits < MostWaits
                && DiskFaults.Inner(problem) is SqliteException { SqliteErrorCode: Busy or Locked } && Stamps() != before)
            {
                continue;
            }
        }
    }

    /// <summary>When the files were last written, and how long they are.</summary>
    private ((DateTime, long) Log, (DateTime, long) Ahead) Stamps() => (Stamp(new(path)), Stamp(new($"{path}-wal")));

    private static (DateTime, long) Stamp(FileInfo file) => file.Exists ? (file.LastWriteTimeUtc, file.Length) : default;
}
