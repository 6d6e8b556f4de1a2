using System.Security.Cryptography;
using Refettle.Logbook;

namespace Refettle.Storage.Tests;

public sealed class BackupTests
{
    private static readonly CarOpened Opened = new("Calder Heron 2.2", 1988, "EUR");

    [Fact]
    public void A_restored_backup_folds_to_the_same_car_under_a_new_device_name()
    {
        using var shelf = new Shelf();
        var (backup, restored) = (Path.Combine(shelf.Folder, "backup"), Path.Combine(shelf.Folder, "restored"));
        using var logbook = shelf.Open();
        logbook.Write("heron", Opened, new Noted("before", null));
        Assert.Equal(2, Backup.Make(logbook, backup).Value);
        var then = Entries(logbook);
        logbook.Write("heron", new Noted("after", null));

        Assert.Equal(2, Backup.Restore(backup, restored, RandomNumberGenerator.Create()).Value);
        using var again = shelf.Open(restored);
        Assert.Equal(CarHistory.Of("heron", then), CarHistory.Of("heron", Entries(again)));
        Assert.NotEqual(logbook.Device, again.Device);
        again.Write("heron", new Noted("after the restore", null));
        again.Append(Entries(logbook));
        Assert.Empty(ChainCheck.Of(Entries(again)));
        Assert.Equal(4, Entries(again).Count);
    }

    /// <summary>The folder is named, not the name that the copy has until it is whole.</summary>
    [Fact]
    public void A_folder_that_is_not_there_is_told_for_both_ways()
    {
        using var shelf = new Shelf();
        var (backup, missing) = (Path.Combine(shelf.Folder, "backup"), Path.Combine(shelf.Folder, "missing", "x"));
        using var logbook = shelf.Open();
        Assert.True(Backup.Make(logbook, backup).IsGood);
        Assert.All(new[] { Backup.Make(logbook, missing), Backup.Restore(backup, missing, RandomNumberGenerator.Create()) }, result =>
            Assert.Equal($"{missing}: its folder is not there. Make the folder first, or give another path.",
                Assert.Single(result.Faults).ToString()));
    }

    [Fact]
    public void A_restored_logbook_is_as_durable_as_a_new_one()
    {
        using var shelf = new Shelf();
        var (backup, restored) = (Path.Combine(shelf.Folder, "backup"), Path.Combine(shelf.Folder, "restored"));
        using (var logbook = shelf.Open())
            Backup.Make(logbook, backup);
        Backup.Restore(backup, restored, RandomNumberGenerator.Create());
        using var again = shelf.Open(restored);
        using var connections = new Connections(restored, create: false);
        using var connection = connections.Open();
        Assert.Equal("wal", connection.Ask<string>("PRAGMA journal_mode"));
    }

    [Fact]
    public void A_backup_taken_while_another_writes_is_a_whole_beginning_of_the_log()
    {
        using var shelf = new Shelf();
        using var logbook = shelf.Open();
        using var writer = WriterProcess.Start(shelf.File, 40, "busy");
        var counts = new List<long>();
        for (var i = 0; i < 5; i++)
            counts.Add(Backup.Make(logbook, Path.Combine(shelf.Folder, $"backup-{i}")).Value);
        Assert.Equal("", writer.Finish().Complaint);
        var all = Entries(logbook);
        for (var i = 0; i < 5; i++)
        {
            using var copy = shelf.Open(Path.Combine(shelf.Folder, $"backup-{i}"));
            Assert.Equal(all.Take((int)counts[i]), Entries(copy));
        }
    }

    [Fact]
    public void Nothing_is_ever_overwritten()
    {
        using var shelf = new Shelf();
        var backup = Path.Combine(shelf.Folder, "backup");
        using var logbook = shelf.Open();
        File.WriteAllText(backup, "mine");
        Assert.Contains("already", Backup.Make(logbook, backup).Faults[0].Found, StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(backup));
        var good = Path.Combine(shelf.Folder, "good");
        Backup.Make(logbook, good);
        Assert.Contains("already", Backup.Restore(good, shelf.File, RandomNumberGenerator.Create()).Faults[0].Found,
            StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_no_backup_is_not_restored()
    {
        using var shelf = new Shelf();
        var (wrong, target) = (Path.Combine(shelf.Folder, "wrong"), Path.Combine(shelf.Folder, "target"));
        Assert.False(Backup.Restore(wrong, target, RandomNumberGenerator.Create()).IsGood);
        File.WriteAllText(wrong, new string('x', 5000));
        Assert.Contains("not a logbook", Backup.Restore(wrong, target, RandomNumberGenerator.Create()).Faults[0].Found,
            StringComparison.Ordinal);
        File.WriteAllText(wrong, "");
        Assert.Contains("not a logbook", Backup.Restore(wrong, target, RandomNumberGenerator.Create()).Faults[0].Found,
            StringComparison.Ordinal);
        Assert.Equal([wrong], Directory.GetFiles(shelf.Folder));
    }

    private static ValueList<Entry> Entries(LogbookStore logbook) => logbook.Read("heron").Select(kept => kept.Entry).ToValueList();
}
