using System.Security.Cryptography;
using Refettle.Logbook;
using Refettle.Storage;

namespace Refettle.Cli.Tests.Verbs;

public sealed class BackupVerbTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("refettle-backup-").FullName;

    [Fact]
    public void A_backup_is_restored_to_a_store_with_the_same_car()
    {
        using var bench = new Bench().WithCar();
        var (backup, restored) = (Path.Combine(_folder, "backup"), Path.Combine(_folder, "restored"));
        Assert.True(bench.Run("backup", backup) == ExitCode.Good, bench.Error);
        Assert.True(bench.Run("restore", backup, "--store", restored) == ExitCode.Good, bench.Error);
        Assert.Equal(bench.Out("show", "--json"), bench.Out("show", "--json", "--store", restored));
        Assert.Equal(ExitCode.Store, bench.Run("backup", backup));
        Assert.Equal(ExitCode.Store, bench.Run("restore", backup, "--store", restored));
        Assert.Contains("already", bench.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void The_photos_go_with_the_backup_and_come_back_with_it()
    {
        using var bench = new Bench().WithCar();
        byte[] picture = [0x89, .. "PNG\r\n"u8, 0x1A, 0x0A, 0, 0, 0, 0, .. "IEND"u8, 0, 0, 0, 0];
        var hash = PhotoStore.Beside(bench.Around.Store).Keep(picture).Value;
        var (backup, restored) = (Path.Combine(_folder, "backup"), Path.Combine(_folder, "restored"));
        Assert.Equal(1, bench.Json("backup", backup).GetProperty("photos").GetInt32());
        Assert.Equal(1, bench.Json("restore", backup, "--store", restored).GetProperty("photos").GetInt32());
        Assert.Equal(picture, File.ReadAllBytes(PhotoStore.Beside(restored).PathOf(hash)!));
    }

    [Fact]
    public void The_photos_of_a_car_go_with_its_log()
    {
        using var bench = new Bench().WithCar();
        byte[] picture = [0x89, .. "PNG\r\n"u8, 0x1A, 0x0A, 0, 0, 0, 0, .. "IEND"u8, 0, 0, 0, 0];
        var hash = PhotoStore.Beside(bench.Around.Store).Keep(picture).Value;
        using (var store = LogbookStore.Open(bench.Around.Store, TimeProvider.System, RandomNumberGenerator.Create()).Value)
            Assert.True(store.Write(store.Cars()[0].Id,
                new PhotoTaken(new()
                { Hash = hash, Width = 4, Height = 3, Small = ContentHash.Of("on the phone"u8), Of = ["part damper"] })).IsGood);
        var (file, other) = (Path.Combine(_folder, "log.jsonl"), Path.Combine(_folder, "other"));
        Assert.Equal(1, bench.Json("export-log", file).GetProperty("photos").GetInt32());
        Assert.Equal(1, bench.Json("import-log", file, "--store", other).GetProperty("photos").GetInt32());
        Assert.Equal(picture, File.ReadAllBytes(PhotoStore.Beside(other).PathOf(hash)!));
    }

    [Fact]
    public void A_photo_that_the_disk_spoilt_is_told_of()
    {
        using var bench = new Bench().WithCar();
        var photos = PhotoStore.Beside(bench.Around.Store);
        var hash = photos.Keep([0x89, .. "PNG\r\n"u8, 0x1A, 0x0A, 0, 0, 0, 0, .. "IEND"u8, 0, 0, 0, 0]).Value;
        File.WriteAllBytes(photos.PathOf(hash)!, [1, 2, 3]);
        Assert.Equal(ExitCode.Store, bench.Run("backup", Path.Combine(_folder, "backup")));
        Assert.Contains(hash, bench.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_log_goes_to_another_store_once()
    {
        using var bench = new Bench().WithCar();
        var (file, other) = (Path.Combine(_folder, "log.jsonl"), Path.Combine(_folder, "other"));
        Assert.True(bench.Run("export-log", file) == ExitCode.Good, bench.Error);
        var first = bench.Json("import-log", file, "--store", other);
        Assert.Equal(first.GetProperty("entries").GetInt32(), first.GetProperty("fresh").GetInt32());
        Assert.Equal(0, bench.Json("import-log", file, "--store", other).GetProperty("fresh").GetInt32());
        Assert.Equal(bench.Out("show", "--json"), bench.Out("show", "--json", "--store", other));
        File.AppendAllText(file, "nonsense\n");
        Assert.Equal(ExitCode.Faults, bench.Run("import-log", file, "--store", other));
        Assert.Contains("line", bench.Error, StringComparison.Ordinal);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
