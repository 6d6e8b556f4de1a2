namespace Refettle.Storage.Keys;

/// <summary>Files that hold a secret.</summary>
internal static class OwnerFile
{
    /// <summary>Writes a file that only its owner may read, in place of any that is there.</summary>
    public static void Write(string path, string text)
    {
        // One that is there would keep who may read it.
        File.Delete(path);
        var options = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        using var file = new StreamWriter(path, options);
        file.Write(text);
    }
}
