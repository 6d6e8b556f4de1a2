using System.Security.Cryptography;

namespace Refettle.Storage.Tests;

/// <summary>A folder of its own for each test, and logbooks in it.</summary>
internal sealed class Shelf : IDisposable
{
    public string Folder { get; } = Directory.CreateTempSubdirectory("refettle-test-").FullName;

    public string File => Path.Combine(Folder, "heron.logbook");

    public LogbookStore Open(string? file = null) => TryOpen(file).Value;

    public Result<LogbookStore> TryOpen(string? file = null, bool create = true) =>
        LogbookStore.Open(file ?? File, TimeProvider.System, RandomNumberGenerator.Create(), create);

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
