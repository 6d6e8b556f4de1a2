using Refettle.Logbook;
using Refettle.Storage;
using Refettle.Storage.Copies;
using Refettle.Storage.Postgres;

namespace Refettle.Cli.Doctor;

/// <summary>Looks at the store: is it whole, are its chains unbroken, is it copied, is there room.</summary>
internal static class StoreCheckup
{
    private const long LittleRoom = 500_000_000;
    private const int OldCopyDays = 8;

    public static IEnumerable<CheckupLine> Of(string store, TimeProvider clock) =>
        PostgresStore.IsConnection(store) ? OnServer(store, clock) : OnDisk(store, clock);

    private static IEnumerable<CheckupLine> OnServer(string connection, TimeProvider clock)
    {
        var opened = Cli.Store.Open(connection);
        if (!opened.IsGood)
            return [new("store", Health.Wrong, opened.Faults[0].ToString(), opened.Faults[0].Mend)];
        using var store = (PostgresStore)opened.Value;
        return [new("store", Health.Good, $"{store.Place} answers"), .. Entries(store, clock),
            new("copies", Health.Mind, "a database server is not copied from here", "Have it backed up there: pg_dump.")];
    }

    private static IEnumerable<CheckupLine> OnDisk(string path, TimeProvider clock)
    {
        yield return Room(path);
        if (!File.Exists(path))
        {
            yield return new("store", Health.Mind, $"there is none yet at {path}",
                "It is made when the first car begins: refettle new NAME, or refettle demo.");
            yield break;
        }

        var opened = Cli.Store.Open(path);
        if (!opened.IsGood)
        {
            yield return new("store", Health.Wrong, opened.Faults[0].Found, opened.Faults[0].Mend);
            yield break;
        }

        using var store = (LogbookStore)opened.Value;
        yield return Whole(store);
        foreach (var condition in Entries(store, clock))
            yield return condition;
        yield return Copies(path, clock);
    }

    private static CheckupLine Room(string path)
    {
        var folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        while (!Directory.Exists(folder))
            folder = Path.GetDirectoryName(folder)!;
        var free = new DriveInfo(folder).AvailableFreeSpace;
        return free < LittleRoom
            ? new("room", Health.Mind, $"{free / 1_000_000} MB are left on the disk of {folder}", "Free some: photos and copies need room.")
            : new("room", Health.Good, $"{free / 1_000_000_000.0:0.#} GB are left on the disk of {folder}");
    }

    private static CheckupLine Whole(LogbookStore store) => store.Damage() is { } damage
        ? new("store", Health.Wrong, $"{store.Path}: {damage}", "Copy it away as it is, then restore a backup or one of the daily copies.")
        : new("store", Health.Good, $"{store.Path} is whole");

    private static IEnumerable<CheckupLine> Entries(IGarageStore store, TimeProvider clock)
    {
        var names = store.Devices.Names();
        foreach (var car in store.Cars())
        {
            var entries = store.Read(car.Id).Select(kept => kept.Entry).ToList();
            var breaks = ChainCheck.Of(entries);
            yield return breaks.Count > 0
                ? new($"log of {car.Id}", Health.Wrong, breaks[0].ToFault().ToString(),
                    "Entries are missing or were changed: import the log of the device that wrote them, or restore a copy.")
                : new($"log of {car.Id}", Health.Good, $"{Views.Wording.Count(entries.Count, "entry", "entries")}, chains unbroken");
            foreach (var doubt in ClockDoubts.Ahead(entries, clock.GetUtcNow()).Select(doubt => doubt.Says(store.Device, names)))
                yield return new("clock", Health.Mind, $"{car.Id}: {doubt.Found}", doubt.Mend);
        }
    }

    private static CheckupLine Copies(string path, TimeProvider clock)
    {
        var today = DateOnly.FromDateTime(clock.GetLocalNow().DateTime);
        if (DailyCopies.Of(path) is not [var newest, ..])
            return new("copies", Health.Mind, "there is no daily copy yet",
                "refettle serve makes one a day; refettle backup FILE makes one now.");
        return newest.Day < today.AddDays(-OldCopyDays)
            ? new("copies", Health.Mind, $"the newest daily copy is of {newest.Day:yyyy-MM-dd}",
                "refettle serve makes one a day; refettle backup FILE makes one now.")
            : new("copies", Health.Good, $"the newest daily copy is of {newest.Day:yyyy-MM-dd}. Keep a backup on another disk too");
    }
}
