using System.Security.Cryptography;
using Refettle.Logbook;
using Refettle.Storage;

namespace Refettle.Cli;

/// <summary>Opens the store on this machine.</summary>
internal static class Store
{
    /// <summary>The logbook at a path; its folder is made too.</summary>
    public static Result<ILogbook> Open(string path)
    {
        try
        {
            if (Path.GetDirectoryName(Path.GetFullPath(path)) is { } folder)
                Directory.CreateDirectory(folder);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            return Result<ILogbook>.Bad(new Fault(path, $"its folder cannot be made ({trouble.Message.TrimEnd('.')})", "Give another with --store."));
        }

        var store = LogbookStore.Open(path, TimeProvider.System, RandomNumberGenerator.Create());
        return store.IsGood ? Result<ILogbook>.Good(store.Value, store.Faults) : Result<ILogbook>.Bad(store.Faults);
    }
}
