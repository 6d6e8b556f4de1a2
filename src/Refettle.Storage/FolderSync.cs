using System.Runtime.InteropServices;

namespace Refettle.Storage;

/// <summary>Makes new names in a folder last over a power cut. Windows keeps them without being asked;
/// elsewhere the folder itself must be flushed, for which the framework has no call.</summary>
internal static partial class FolderSync
{
    private const int ReadOnly = 0;

    /// <summary>Does nothing where it is not needed or not possible: the file's own bytes are on the disk already.</summary>
    public static void Flush(string folder)
    {
        if (OperatingSystem.IsWindows())
            return;
        var handle = Open(folder, ReadOnly);
        if (handle < 0)
            return;
        _ = Sync(handle);
        _ = Close(handle);
    }

    [LibraryImport("libc", EntryPoint = "open", StringMarshalling = StringMarshalling.Utf8, SetLastError = true)]
    private static partial int Open(string path, int flags);

    [LibraryImport("libc", EntryPoint = "fsync", SetLastError = true)]
    private static partial int Sync(int handle);

    [LibraryImport("libc", EntryPoint = "close", SetLastError = true)]
    private static partial int Close(int handle);
}
