using Refettle.Logbook;

namespace Refettle.Storage.Tests;

public sealed class LogbookStoreTests
{
    private static readonly CarOpened Opened = new("Calder Heron 2.2", 1988, "EUR");

    [Fact]
    public void What_was_written_is_there_after_opening_again()
    {
        using var shelf = new Shelf();
        ValueList<Entry> written;
        string device;
        using (var logbook = shelf.Open())
        {
            written = logbook.Write("heron", Opened, new Noted("Bolt ½\" – \"moved\" 🔧", null)).Value;
            device = logbook.Device;
        }

        using var again = shelf.Open();
        Assert.Equal(device, again.Device);
        Assert.Equal(written, again.Read("heron").Select(kept => kept.Entry).ToValueList());
        Assert.Equal("Calder Heron 2.2", CarHistory.Of("heron", written).Car.Name);
        Assert.Equal([new ShelfCar("heron", "Calder Heron 2.2", 2)], again.Cars());
        Assert.Empty(ChainCheck.Of(again.Read("heron").Select(kept => kept.Entry)));
    }

    [Fact]
    public void Each_car_has_a_chain_of_its_own_and_a_cursor_gives_what_is_new()
    {
        using var shelf = new Shelf();
        using var logbook = shelf.Open();
        logbook.Write("heron", Opened);
        logbook.Write("saloon", new CarOpened("Calder Heron 1.8", 1986, "EUR"));
        var last = logbook.Read("heron").Last().Position;
        var noted = logbook.Write("heron", new Noted("wet", null)).Value;
        Assert.Equal(noted, logbook.Read("heron", last).Select(kept => kept.Entry).ToValueList());
        Assert.Equal([1L, 2L], logbook.Read("heron").Select(kept => kept.Entry.Sequence));
        Assert.Equal([1L], logbook.Read("saloon").Select(kept => kept.Entry.Sequence));
        Assert.Equal(["heron", "saloon"], logbook.Cars().Select(car => car.Id));
    }

    [Fact]
    public void Entries_of_another_device_come_in_any_order_and_twice_without_harm()
    {
        using var shelf = new Shelf();
        using var there = shelf.Open(Path.Combine(shelf.Folder, "there"));
        using var here = shelf.Open();
        var entries = there.Write("heron", Enumerable.Range(0, 20).Select(i => new Noted($"note {i}", null))).Value;
        Assert.Equal(10, here.Append(entries.Reverse().Take(10)).Value);
        Assert.Equal(10, here.Append(entries).Value);
        Assert.Equal(0, here.Append(entries).Value);
        Assert.Equal(
            CarHistory.Of("heron", entries).Lines,
            CarHistory.Of("heron", here.Read("heron").Select(kept => kept.Entry)).Lines);
    }

    [Fact]
    public void What_is_written_next_comes_after_what_arrived()
    {
        using var shelf = new Shelf();
        using var there = shelf.Open(Path.Combine(shelf.Folder, "there"));
        using var here = shelf.Open();
        var theirs = there.Write("heron", Opened, new Noted("theirs", null)).Value;
        here.Append(theirs);
        var mine = here.Write("heron", new Noted("mine", null), new Noted("mine again", null)).Value;
        Assert.Equal([theirs[1].Id], mine[0].After);
        Assert.Empty(mine[1].After);
        Assert.Equal(EntryHash.Of(mine[0]), mine[1].Previous);
    }

    [Fact]
    public void An_entry_with_the_identifier_of_another_is_a_fault_and_nothing_of_its_batch_is_kept()
    {
        using var shelf = new Shelf();
        using var there = shelf.Open(Path.Combine(shelf.Folder, "there"));
        using var here = shelf.Open();
        var entries = there.Write("heron", Opened, new Noted("original", null), new Noted("new", null)).Value;
        here.Append(entries.Take(2));
        var forged = entries[1] with { Payload = """{"text":"forged"}""" };
        var refused = here.Append([entries[2], forged]);
        Assert.False(refused.IsGood);
        Assert.Contains(forged.Id.ToString(), Assert.Single(refused.Faults).Place, StringComparison.Ordinal);
        Assert.Equal(entries.Take(2), here.Read("heron").Select(kept => kept.Entry));
    }

    [Fact]
    public void Entries_without_the_form_of_one_are_refused()
    {
        using var shelf = new Shelf();
        using var there = shelf.Open(Path.Combine(shelf.Folder, "there"));
        using var here = shelf.Open();
        var entry = there.Write("heron", Opened).Value[0];
        Assert.False(here.Append([entry with { Payload = "{" }]).IsGood);
        Assert.False(here.Append([entry with { Car = "../heron" }]).IsGood);
        Assert.False(here.Append([entry with { Salt = "" }]).IsGood);
        Assert.Empty(here.Read("heron"));
    }

    [Fact]
    public void A_kind_from_a_newer_version_is_kept_letter_for_letter()
    {
        using var shelf = new Shelf();
        using var there = shelf.Open(Path.Combine(shelf.Folder, "there"));
        using var here = shelf.Open();
        var entry = there.Write("heron", Opened).Value[0] with
        { Kind = "tune-hummed", Version = 3, Payload = """{ "tune" : "\u00e9", "n": 1.50 }""" };
        Assert.True(here.Append([entry]).IsGood);
        Assert.Equal(entry, here.Read("heron").Single().Entry);
        Assert.Equal(Standing.FromNewerVersion, CarHistory.Of("heron", here.Read("heron").Select(kept => kept.Entry)).Lines[0].Standing);
    }
}
