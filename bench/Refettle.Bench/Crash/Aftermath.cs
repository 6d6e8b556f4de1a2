using System.Security.Cryptography;
using Microsoft.Data.Sqlite;
using Refettle.Imaging;
using Refettle.Logbook;
using Refettle.Storage;

namespace Refettle.Bench.Crash;

/// <summary>What is left of a logbook after a crash.</summary>
internal static class Aftermath
{
    /// <returns>What is wrong; empty when every acknowledged entry and photo is there and whole, the chain
    /// holds and the database is sound.</returns>
    public static string[] Look(string file, IEnumerable<Guid> acknowledged, IEnumerable<string> photos)
    {
        var opened = LogbookStore.Open(file, TimeProvider.System, RandomNumberGenerator.Create(), create: false);
        if (!opened.IsGood)
            return [.. opened.Faults.Select(fault => fault.ToString())];
        using var logbook = opened.Value;
        var entries = logbook.Read(NoteWriter.Car).Select(kept => kept.Entry).ToList();
        var lost = acknowledged.Except(entries.Select(entry => entry.Id)).Select(id => $"acknowledged entry {id} is lost");
        var broken = ChainCheck.Of(entries).Select(found => found.ToFault().ToString());
        return [.. lost, .. broken, .. Unsound(file), .. photos.Select(hash => Photo(logbook.Photos, hash)).OfType<string>()];
    }

    private static string? Photo(PhotoStore photos, string hash) =>
        photos.PathOf(hash) is not { } path ? $"acknowledged photo {hash} is lost"
        : ContentHash.Of(File.ReadAllBytes(path)) != hash ? $"acknowledged photo {hash} is damaged"
        : null;

    private static string[] Unsound(string file)
    {
        using var connection = new SqliteConnection($"Data Source={file};Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "PRAGMA integrity_check";
        return command.ExecuteScalar() is "ok" ? [] : ["the database is damaged"];
    }
}
