using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Refettle.Logbook;

namespace Refettle.Storage.Tests;

public sealed class FormChangeTests
{
    private static readonly Noted Note = new("from the old form", null);

    [Fact]
    public void A_logbook_of_the_first_form_is_copied_then_changed_and_loses_nothing()
    {
        using var shelf = new Shelf();
        var entries = MakeOld(shelf);
        using (var logbook = shelf.Open())
        {
            Assert.Equal(entries, logbook.Read("heron").Select(kept => kept.Entry));
            Assert.True(logbook.Devices.NewCode().IsGood);
        }

        using var copy = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={Backup.BeforeChange(shelf.File, 1)};Pooling=False");
        copy.Open();
        Assert.Equal(1, copy.Ask<long>("PRAGMA user_version"));
        Assert.Equal(1, copy.Ask<long>("SELECT count(*) FROM Entries"));
    }

    [Fact]
    public void A_copy_left_by_a_change_that_broke_off_is_replaced()
    {
        using var shelf = new Shelf();
        MakeOld(shelf);
        File.WriteAllText(Backup.BeforeChange(shelf.File, 1), "half");
        using var logbook = shelf.Open();
        Assert.Null(Opening.Examine(Backup.BeforeChange(shelf.File, 1)));
    }

    [Fact]
    public void Where_no_copy_can_be_made_nothing_is_changed()
    {
        using var shelf = new Shelf();
        MakeOld(shelf);
        Directory.CreateDirectory(Backup.BeforeChange(shelf.File, 1));
        Assert.False(shelf.TryOpen().IsGood);
        Directory.Delete(Backup.BeforeChange(shelf.File, 1));
        using var logbook = shelf.Open();
        Assert.Single(logbook.Read("heron"));
    }

    /// <summary>Writes an entry, then takes the later forms' tables away again.</summary>
    private static List<Entry> MakeOld(Shelf shelf)
    {
        List<Entry> entries;
        using (var logbook = shelf.Open())
            entries = [.. logbook.Write("heron", Note).Value];
        using var connections = new Connections(shelf.File, create: false);
        using (var context = connections.Context())
        using (var connection = connections.Open())
        {
            var names = context.GetService<IMigrationsAssembly>().Migrations.Keys.ToList();
            connection.Run(context.GetService<IMigrator>()
                .GenerateScript(names[^1], names[0], MigrationsSqlGenerationOptions.NoTransactions));
            connection.Run("PRAGMA user_version = 1");
        }

        return entries;
    }
}
