using System.Text;

namespace Refettle.Cli.Commands;

/// <summary>Reads and writes files of text, with a fault where that fails.</summary>
internal static class TextFile
{
    /// <summary>The longest file that is read, in bytes.</summary>
    private const long Largest = 64 << 20;

    public static Result<byte[]> Bytes(string path, long largest = Largest)
    {
        try
        {
            var size = new FileInfo(path).Length;
            return size > largest
                ? Result<byte[]>.Bad(new Fault(path, $"the file has {size >> 20} MB", $"Give one of at most {largest >> 20} MB."))
                : Result<byte[]>.Good(File.ReadAllBytes(path));
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            return Result<byte[]>.Bad(new Fault(path, Found(path, trouble), "Check the path and its permissions."));
        }
    }

    public static Result<string> Text(string path)
    {
        var bytes = Bytes(path);
        if (!bytes.IsGood)
            return Result<string>.Bad(bytes.Faults);
        try
        {
            return Result<string>.Good(new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(bytes.Value).TrimStart('\uFEFF'));
        }
        catch (DecoderFallbackException)
        {
            return Result<string>.Bad(new Fault(path, "it is not text in UTF-8", "Save it as UTF-8 (in a spreadsheet: CSV UTF-8)."));
        }
    }

    public static Result<string[]> Lines(string path)
    {
        var text = Text(path);
        return text.IsGood
            ? Result<string[]>.Good(text.Value.Split('\n').Select(line => line.TrimEnd('\r')).ToArray())
            : Result<string[]>.Bad(text.Faults);
    }

    /// <summary>What was there stays until all of it is written.</summary>
    public static Result<string> Write(string path, string text) =>
        BinaryFile.Write(path, file => file.Write(Encoding.UTF8.GetBytes(text)));

    /// <summary>What was read from a file, its faults with the file's name.</summary>
    public static Result<T> From<T>(string path, Result<T> read) => read.IsGood ? read
        : Result<T>.Bad(read.Faults.Select(fault => fault.File.Length > 0 ? fault : fault with { File = path }));

    private static string Found(string path, Exception trouble) => trouble switch
    {
        FileNotFoundException or DirectoryNotFoundException => Directory.Exists(path)
            ? "this is a folder, not a file"
            : "there is no such file",
        _ when Directory.Exists(path) => "this is a folder, not a file",
        _ => $"it cannot be read ({trouble.Message.TrimEnd('.')})",
    };
}
