using System.CommandLine;
using System.Security.Cryptography;
using Refettle.Cli.Views;
using Refettle.Storage;

namespace Refettle.Cli.Verbs;

/// <summary>Copies the whole store away and back.</summary>
internal static class BackupVerbs
{
    public static Command Backup(Desk desk)
    {
        var file = new Argument<string>("file") { Description = "A new file." };
        return new Command("backup", "Copies the store to a file, whole, also while others write to it.") { file }
            .Answers(desk, parsed => desk.WithLogbook(parsed, logbook => logbook is LogbookStore store
                ? Kept(Storage.Backup.Make(store, desk.PathOf(parsed.GetRequiredValue(file))), "backed up to", store.Path,
                    desk.PathOf(parsed.GetRequiredValue(file)))
                : Reply.Bad([new(logbook.Place, "a database server keeps this store",
                    "Back it up there (pg_dump), or each car with export-log.")])));
    }

    public static Command Restore(Desk desk)
    {
        var file = new Argument<string>("file") { Description = "What backup wrote." };
        return new Command("restore", "Brings a backup back as the store; there must be none at its path.") { file }
            .Answers(desk, parsed =>
            {
                var store = parsed.GetValue<string>(GlobalOptions.Store) ?? desk.Around.Store;
                var backup = desk.PathOf(parsed.GetRequiredValue(file));
                return Kept(Storage.Backup.Restore(backup, store, RandomNumberGenerator.Create()), "restored to", backup, store);
            });
    }

    /// <summary>The photos go along, into a folder beside the file.</summary>
    private static Reply Kept(Result<long> entries, string done, string from, string path)
    {
        if (!entries.IsGood)
            return Reply.Bad(entries.Faults, ExitCode.Store);
        var photos = PhotoStore.Beside(from).CopyTo(PhotoStore.Beside(path));
        return photos.IsGood
            ? Reply.Said($"{entries.Value} entries and {Wording.Count(photos.Value, "photo")} {done} {path}.",
                new { entries = entries.Value, photos = photos.Value, file = path })
            : Reply.Bad(photos.Faults, ExitCode.Store);
    }
}
