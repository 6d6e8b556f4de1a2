using Refettle.Cli.Commands;

namespace Refettle.Cli.Tests.Commands;

public sealed class TextFileTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory().FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    /// <summary>Who still has the old file open reads all of the old text: nothing was written into it.</summary>
    [Fact]
    public void What_was_there_is_replaced_and_not_written_over()
    {
        var path = Path.Combine(_folder, "log.jsonl");
        File.WriteAllText(path, "the first");
        using var old = new StreamReader(path);
        Assert.Equal(path, TextFile.Write(path, "the second, öfter").Value);
        Assert.Equal("the first", old.ReadToEnd());
        Assert.Equal("the second, öfter", File.ReadAllText(path));
        Assert.Equal([path], Directory.GetFiles(_folder));
    }

    [Fact]
    public void What_breaks_off_leaves_what_was_there()
    {
        var path = Path.Combine(_folder, "log.jsonl");
        File.WriteAllText(path, "the first");
        var fault = Assert.Single(BinaryFile.Write(path, file =>
        {
            file.Write("half"u8);
            throw new IOException("No space left on device.");
        }).Faults);
        Assert.Equal((path, "it cannot be written (No space left on device)"), (fault.Place, fault.Found));
        Assert.Equal("the first", File.ReadAllText(path));
        Assert.Equal([path], Directory.GetFiles(_folder));
    }
}
