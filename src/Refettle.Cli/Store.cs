using System.Security.Cryptography;
using Refettle.Logbook;
using Refettle.Storage;
using Refettle.Storage.Postgres;

namespace Refettle.Cli;

/// <summary>Opens the store: a file on this machine, or a database server.</summary>
internal static class Store
{
    /// <summary>The logbook at a path, whose folder is made too where the one above it is there; or on a
    /// server, when given a connection.</summary>
    public static Result<IGarageStore> Open(string path) => PostgresStore.IsConnection(path)
        ? Opened(PostgresStore.Open(path, TimeProvider.System, RandomNumberGenerator.Create()))
        : OpenFile(path);

    private static Result<IGarageStore> OpenFile(string path)
    {
        try
        {
            var folder = Path.GetDirectoryName(Path.GetFullPath(path));
            if (Path.GetDirectoryName(folder) is { } above && !Directory.Exists(above))
                return Result<IGarageStore>.Bad(new Fault(path, $"there is no folder {above}",
                    "Look at the path again, make the folder, or give another with --store."));
            if (folder is not null)
                Directory.CreateDirectory(folder);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            return Result<IGarageStore>.Bad(
                new Fault(path, $"its folder cannot be made ({trouble.Message.TrimEnd('.')})", "Give another with --store."));
        }

        return Opened(LogbookStore.Open(path, TimeProvider.System, RandomNumberGenerator.Create()));
    }

    private static Result<IGarageStore> Opened<T>(Result<T> store)
        where T : IGarageStore =>
            store.IsGood ? Result<IGarageStore>.Good(store.Value, store.Faults) : Result<IGarageStore>.Bad(store.Faults);
}
