using Microsoft.Data.Sqlite;
using Refettle.Logbook;

namespace Refettle.Storage.Tests;

/// <summary>What goes wrong with files is said in one message, and nothing is lost or touched.</summary>
public sealed class DiskFaultTests
{
    [Fact]
    public void No_logbook_where_one_is_expected()
    {
        using var shelf = new Shelf();
        AssertFault(shelf.TryOpen(create: false), "there is no logbook");
        Assert.False(File.Exists(shelf.File));
    }

    [Fact]
    public void No_folder()
    {
        using var shelf = new Shelf();
        AssertFault(shelf.TryOpen(Path.Combine(shelf.Folder, "missing", "x")), "the file cannot be opened");
    }

    [Fact]
    public void A_folder_in_place_of_a_file()
    {
        using var shelf = new Shelf();
        AssertFault(shelf.TryOpen(shelf.Folder), "this is a folder, not a file");
    }

    [Fact]
    public void Not_a_database()
    {
        using var shelf = new Shelf();
        File.WriteAllText(shelf.File, new string('x', 5000));
        AssertFault(shelf.TryOpen(), "this is not a logbook");
        Assert.Equal(5000, new FileInfo(shelf.File).Length);
    }

    [Fact]
    public void Another_programs_database()
    {
        using var shelf = new Shelf();
        Run(shelf.File, "CREATE TABLE Recipes (Name TEXT)");
        var before = File.ReadAllBytes(shelf.File);
        AssertFault(shelf.TryOpen(), "database of another program");
        Assert.Equal(before, File.ReadAllBytes(shelf.File));
    }

    [Fact]
    public void A_newer_versions_logbook()
    {
        using var shelf = new Shelf();
        shelf.Open().Dispose();
        Run(shelf.File, $"PRAGMA user_version = {Opening.Schema + 1}");
        AssertFault(shelf.TryOpen(), "newer version");
    }

    [Fact]
    public void Schema_numbers_count_the_migrations()
    {
        using var shelf = new Shelf();
        using var connections = new Connections(shelf.File, create: true);
        using var context = connections.Context();
        Assert.Equal(Opening.Schema,
            Microsoft.EntityFrameworkCore.RelationalDatabaseFacadeExtensions.GetMigrations(context.Database).Count());
        Assert.False(Microsoft.EntityFrameworkCore.RelationalDatabaseFacadeExtensions.HasPendingModelChanges(context.Database));
    }

    [Fact]
    public void Locked_by_another_program()
    {
        using var shelf = new Shelf();
        using var logbook = shelf.Open();
        logbook.Write("heron", new Noted("before", null));
        using var other = new SqliteConnection($"Data Source={shelf.File};Pooling=False");
        other.Open();
        using (other.BeginTransaction(deferred: false))
            AssertFault(logbook.Write("heron", new Noted("while locked", null)), "locked");
        Assert.True(logbook.Write("heron", new Noted("after", null)).IsGood);
        Assert.Equal(2, logbook.Read("heron").Count());
    }

    /// <summary>SQLite itself plays the full disk: https://sqlite.org/pragma.html#pragma_max_page_count. The limit stays with the
    /// connection, which the logbook takes from the pool next.</summary>
    [Fact]
    public void Disk_full()
    {
        using var shelf = new Shelf();
        using var connections = new Connections(shelf.File, create: true);
        using var logbook = shelf.Open();
        logbook.Write("heron", new Noted("before", null));
        using (var connection = connections.Open())
            connection.Ask<long>($"PRAGMA max_page_count = {connection.Ask<long>("PRAGMA page_count") + 4}");
        AssertFault(logbook.Write("heron", Enumerable.Repeat(new Noted(new('x', 5000), null), 100)), "the disk is full");
        Assert.Single(logbook.Read("heron"));
        Assert.True(logbook.Write("heron", new Noted("after", null)).IsGood);
    }

    /// <summary>Linux's /dev/full (man 4 full) answers every write with ENOSPC. It stands in for the
    /// file in which the photo arrives.</summary>
    [LinuxFact]
    public void Disk_full_under_the_photos()
    {
        using var shelf = new Shelf();
        using var logbook = shelf.Open();
        var picture = PhotoStoreTests.Png(20_000);
        var arriving = Path.Combine(logbook.Photos.Folder, "arriving", ContentHash.Of(picture) + ".part");
        Directory.CreateDirectory(Path.GetDirectoryName(arriving)!);
        File.CreateSymbolicLink(arriving, "/dev/full");
        AssertFault(logbook.Photos.Keep(picture), "the disk is full");
        Assert.Empty(logbook.Photos.All());
        File.Delete(arriving);
        Assert.True(logbook.Photos.Keep(picture).IsGood);
    }

    /// <summary>A program that died leaves its log behind; here the last bytes of it were not written, or
    /// written wrong. SQLite drops the frames from the first whose checksum is off (https://sqlite.org/fileformat2.html#walformat), and
    /// nothing has to be said: what is dropped was never acknowledged.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_torn_write_ahead_log(bool cut)
    {
        using var shelf = new Shelf();
        var (copy, ahead) = (Path.Combine(shelf.Folder, "copy"), Path.Combine(shelf.Folder, "copy-wal"));
        using (var logbook = shelf.Open())
        {
            for (var i = 0; i < 20; i++)
                logbook.Write("heron", new Noted($"note {i}", null));
            File.Copy(shelf.File, copy);
            File.Copy(shelf.File + "-wal", ahead);
        }

        using (var torn = File.OpenWrite(ahead))
        {
            if (cut)
                torn.SetLength(torn.Length - 1_000);
            torn.Position = torn.Length - 1_000;
            torn.Write(new byte[500]);
        }

        using var opened = shelf.Open(copy);
        var entries = opened.Read("heron").Select(kept => kept.Entry).ToList();
        Assert.Equal(19, entries.Count);
        Assert.Empty(ChainCheck.Of(entries));
        Assert.Null(opened.Damage());
        Assert.True(opened.Write("heron", new Noted("after", null)).IsGood);
    }

    [Fact]
    public void A_damaged_file_is_reported_when_it_is_read()
    {
        using var shelf = new Shelf();
        using (var logbook = shelf.Open())
            logbook.Write("heron", Enumerable.Range(0, 500).Select(i => new Noted($"note {i} {new string('x', 200)}", null)));
        using (var file = File.OpenWrite(shelf.File))
        {
            file.Position = 100_000;
            file.Write(new byte[60_000]);
        }

        using var damaged = shelf.Open();
        var problem = Assert.Throws<LogbookException>(() => damaged.Read("heron").ToList());
        Assert.Contains("damaged", problem.Fault.Found, StringComparison.Ordinal);
    }

    /// <summary>A changed copy of a logbook, with a time before the calendar begins, once ended the program.</summary>
    [Theory]
    [InlineData("At = -85065776400706")]
    [InlineData("At = 9223372036854775807")]
    [InlineData("Id = 'heron'")]
    [InlineData("After = 'heron'")]
    public void A_cell_that_holds_what_it_cannot_is_damage(string change)
    {
        using var shelf = new Shelf();
        using (var logbook = shelf.Open())
            logbook.Write("heron", [new Noted("one", null), new Noted("two", null)]);
        Run(shelf.File, $"UPDATE Entries SET {change} WHERE Position = 2");
        using var damaged = shelf.Open();
        var problem = Assert.Throws<LogbookException>(() => damaged.Read("heron").ToList());
        Assert.Contains("damaged", problem.Fault.Found, StringComparison.Ordinal);
        AssertFault(damaged.Write("heron", new Noted("three", null)), "damaged");
    }

    private static void Run(string file, string sql)
    {
        using var connection = new SqliteConnection($"Data Source={file};Pooling=False");
        connection.Open();
        connection.Run(sql);
    }

    private static void AssertFault<T>(Result<T> result, string found)
    {
        Assert.False(result.IsGood);
        var fault = Assert.Single(result.Faults);
        Assert.Contains(found, fault.Found, StringComparison.Ordinal);
        Assert.NotEmpty(fault.Mend);
    }
}
