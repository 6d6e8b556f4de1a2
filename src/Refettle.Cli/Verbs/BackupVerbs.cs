using System.CommandLine;
using System.Security.Cryptography;
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
                ? Kept(Storage.Backup.Make(store, desk.PathOf(parsed.GetRequiredValue(file))), "backed up to", desk.PathOf(parsed.GetRequiredValue(file)))
                : Reply.Bad([new(((IGarageStore)logbook).Place, "a database server keeps this store", "Back it up there (pg_dump), or each car with export-log.")])));
    }

    public static Command Restore(Desk desk)
    {
        var file = new Argument<string>("file") { Description = "What backup wrote." };
        return new Command("restore", "Brings a backup back as the store; there must be none at its path.") { file }
            .Answers(desk, parsed =>
            {
                var store = parsed.GetValue<string>(GlobalOptions.Store) ?? desk.Around.Store;
                return Kept(Storage.Backup.Restore(desk.PathOf(parsed.GetRequiredValue(file)), store, RandomNumberGenerator.Create()), "restored to", store);
            });
    }

    private static Reply Kept(Result<long> entries, string done, string path) => entries.IsGood
        ? Reply.Said($"{entries.Value} entries {done} {path}.", new { entries = entries.Value, file = path })
        : Reply.Bad(entries.Faults, ExitCode.Store);
}
