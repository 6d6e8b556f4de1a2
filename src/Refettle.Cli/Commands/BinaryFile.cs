namespace Refettle.Cli.Commands;

/// <summary>Writes files, with a fault where that fails.</summary>
internal static class BinaryFile
{
    /// <summary>Under a name of its own until it is whole; then it takes the place of what was there.</summary>
    /// <param name="write">Gets a stream that can be read and sought in.</param>
    /// <returns>The path.</returns>
    public static Result<string> Write(string path, Action<Stream> write)
    {
        var partial = path + ".partial";
        try
        {
            using (var file = new FileStream(partial, FileMode.Create, FileAccess.ReadWrite))
                write(file);
            File.Move(partial, path, overwrite: true);
            return Result<string>.Good(path);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            return Result<string>.Bad(new Fault(path,
                $"it cannot be written ({trouble.Message.Replace(partial, path, StringComparison.Ordinal).TrimEnd('.')})",
                "Check the folder, its permissions and the space left."));
        }
        finally
        {
            if (File.Exists(partial))
                File.Delete(partial);
        }
    }
}
