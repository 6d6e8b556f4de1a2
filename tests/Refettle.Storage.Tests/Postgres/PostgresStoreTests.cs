using System.Security.Cryptography;
using Refettle.Logbook;
using Refettle.Storage.Postgres;

namespace Refettle.Storage.Tests.Postgres;

public sealed class PostgresStoreTests(PostgresServer server) : IClassFixture<PostgresServer>
{
    private static readonly CarOpened Opened = new("Calder Heron 2.2", 1988, "EUR");

    [NeedsPostgresFact]
    public void What_was_acknowledged_is_there_when_it_is_opened_again()
    {
        var connection = server.NewDatabase();
        string device;
        using (var store = Open(connection))
        {
            device = store.Device;
            Assert.True(store.Write("heron", Opened, new Noted("one", null)).IsGood);
        }

        using var again = Open(connection);
        Assert.Equal(device, again.Device);
        Assert.Equal("Calder Heron 2.2", again.Cars().Single().Name);
        Assert.Equal(2, again.Read("heron").Count());
        Assert.Equal(again.Read("heron").Skip(1), again.Read("heron", after: again.Read("heron").First().Position));
    }

    [NeedsPostgresFact]
    public void Entries_are_taken_in_once_and_one_that_was_changed_is_refused()
    {
        using var shelf = new Shelf();
        using var bay = shelf.Open();
        bay.Write("heron", Opened, new Noted("one", null));
        using var store = Open(server.NewDatabase());
        Assert.Equal(2, store.Append(Entries(bay)).Value);
        Assert.Equal(0, store.Append(Entries(bay)).Value);
        Assert.False(store.Append(Entries(bay).Select(entry => entry with { At = entry.At.AddSeconds(1) })).IsGood);
        Assert.Equal(Entries(bay), Entries(store));
    }

    [NeedsPostgresFact]
    public async Task Several_bays_that_write_at_once_keep_one_unbroken_chain()
    {
        var connection = server.NewDatabase();
        var bays = Enumerable.Range(0, 4).Select(_ => Open(connection)).ToList();
        await Task.WhenAll(bays.Select((bay, number) => Task.Run(() =>
        {
            for (var i = 0; i < 25; i++)
                Assert.True(bay.Write("heron", new Noted($"bay {number}, note {i}", null)).IsGood);
        })));
        Assert.Equal(100, Entries(bays[0]).Count);
        Assert.Empty(ChainCheck.Of(Entries(bays[0])));
        bays.ForEach(bay => bay.Dispose());
    }

    [NeedsPostgresFact]
    public void A_shop_moves_to_the_server_and_back_and_loses_nothing()
    {
        using var shelf = new Shelf();
        using var before = shelf.Open();
        before.Write("heron", Opened, new Noted("one", null), new HeightMeasured("rl", new(382)));
        before.Write("saloon", new CarOpened("Calder Heron 1.8", 1987, "EUR"));
        using var store = Open(server.NewDatabase());
        using var after = shelf.Open(Path.Combine(shelf.Folder, "back"));
        foreach (var car in new[] { "heron", "saloon" })
        {
            Assert.True(store.Append(Moved(Entries(before, car))).IsGood);
            Assert.True(after.Append(Moved(Entries(store, car))).IsGood);
            Assert.Equal(Entries(before, car), Entries(after, car));
            Assert.Equal(CarHistory.Of(car, Entries(before, car)), CarHistory.Of(car, Entries(after, car)));
        }

        Assert.Equal(before.Cars().Select(car => (car.Id, car.Name)), after.Cars().Select(car => (car.Id, car.Name)));
    }

    [NeedsPostgresFact]
    public void A_photo_that_one_bay_took_is_shown_in_every_other()
    {
        var connection = server.NewDatabase();
        using var shelf = new Shelf();
        using var first = Open(connection);
        using var second = Open(connection);
        var (here, there) = (Bay(shelf, "here", first), Bay(shelf, "there", second));
        var picture = PhotoStoreTests.Png(20_000);
        var hash = here.Keep(picture).Value;
        Assert.Equal([hash], there.All());
        Assert.Equal(new PhotoProgress(picture.Length, true), there.Progress(hash));
        Assert.Equal(picture, File.ReadAllBytes(there.PathOf(hash)!));
        Assert.Null(there.PathOf(ContentHash.Of("another"u8)));
        Assert.Equal(hash, there.Keep(picture).Value);
        Assert.Equal([hash], first.Pictures.All());
    }

    [NeedsPostgresFact]
    public void Photos_that_lay_on_one_bay_alone_are_given_to_the_others()
    {
        using var shelf = new Shelf();
        using var store = Open(server.NewDatabase());
        var hash = new PhotoStore(Path.Combine(shelf.Folder, "old")).Keep(PhotoStoreTests.Png(900)).Value;
        var old = Bay(shelf, "old", store);
        Assert.Null(Bay(shelf, "new", store).PathOf(hash));
        Assert.Equal(1, old.Share().Value);
        Assert.Equal(0, old.Share().Value);
        Assert.NotNull(Bay(shelf, "new", store).PathOf(hash));
    }

    [NeedsPostgresFact]
    public void Photos_move_to_the_server_and_back_byte_by_byte()
    {
        using var shelf = new Shelf();
        using var store = Open(server.NewDatabase());
        var (before, after) = (PhotoStore.Beside(shelf.File), new PhotoStore(Path.Combine(shelf.Folder, "back")));
        var pictures = new[] { 900, 5_000, 300_000 }.Select(PhotoStoreTests.Png).ToDictionary(picture => before.Keep(picture).Value);
        Assert.Equal(3, before.CopyTo(Bay(shelf, "moved", store)).Value);
        Assert.Equal(3, Bay(shelf, "another", store).CopyTo(after).Value);
        Assert.All(pictures, pair => Assert.Equal(pair.Value, File.ReadAllBytes(after.PathOf(pair.Key)!)));
        Assert.Equal(pictures.Keys.Order(), after.All().Order());
    }

    [NeedsPostgresFact]
    public void Devices_are_paired_and_turned_away_there_too()
    {
        using var store = Open(server.NewDatabase());
        var paired = store.Devices.Pair(store.Devices.NewCode().Value, "phone").Value;
        Assert.Equal(paired.Device, store.Devices.Find(paired.Token));
        Assert.True(store.Devices.Revoke(paired.Device.Id).IsGood);
        Assert.Null(store.Devices.Find(paired.Token));
    }

    [NeedsPostgresFact]
    public void What_is_wrong_with_a_server_is_said_in_words()
    {
        var connection = server.NewDatabase();
        Assert.Contains("does not accept this user",
            Fault(connection.Replace("Username=postgres", "Username=nobody", StringComparison.Ordinal)), StringComparison.Ordinal);
        Assert.Contains("cannot be reached", Fault("Host=127.0.0.1;Port=1;Database=x;Username=y;Timeout=2"), StringComparison.Ordinal);
        Assert.Contains("cannot be read", Fault("Host=a;Nonsense=1"), StringComparison.Ordinal);
    }

    private static PhotoStore Bay(Shelf shelf, string name, PostgresStore store) => new(Path.Combine(shelf.Folder, name), store.Pictures);

    private static string Fault(string connection) =>
        PostgresStore.Open(connection, TimeProvider.System, RandomNumberGenerator.Create()).Faults[0].ToString();

    private static PostgresStore Open(string connection) =>
        PostgresStore.Open(connection, TimeProvider.System, RandomNumberGenerator.Create()).Value;

    private static List<Entry> Entries(ILogbook logbook, string car = "heron") => [.. logbook.Read(car).Select(kept => kept.Entry)];

    /// <summary>As export-log writes and import-log reads.</summary>
    private static ValueList<Entry> Moved(List<Entry> entries)
    {
        using var text = new StringWriter();
        LogLines.Write(entries, text);
        return LogLines.Read(new StringReader(text.ToString())).Value;
    }
}
