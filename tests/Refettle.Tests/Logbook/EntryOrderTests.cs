using Refettle.Logbook;

namespace Refettle.Tests.Logbook;

public sealed class EntryOrderTests
{
    [Fact]
    public void A_device_whose_clock_is_a_day_ahead_does_not_get_the_last_word()
    {
        var (ahead, right) = (new TestDevice("ahead", clockOff: TimeSpan.FromDays(1)), new TestDevice("right"));
        ahead.Write(new Noted("first", null));
        right.Learn(ahead.Known);
        right.Write(new Noted("second", null));
        ahead.Learn(right.Known);
        ahead.Write(new Noted("third", null));
        Assert.Equal(["first", "second", "third"], Notes(ahead.History()));
    }

    [Fact]
    public void Entries_that_know_nothing_of_each_other_go_by_device()
    {
        var (b, a) = (new TestDevice("b"), new TestDevice("a"));
        b.Write(new Noted("b1", null));
        b.Write(new Noted("b2", null));
        a.Write(new Noted("a1", null));
        Assert.Equal(["a1", "b1", "b2"], Notes(CarHistory.Of(TestDevice.Car, [.. b.Known, .. a.Known])));
    }

    [Fact]
    public void Missing_entries_are_borne()
    {
        var (here, there) = (new TestDevice("here"), new TestDevice("there"));
        for (var i = 1; i <= 6; i++)
            here.Write(new Noted($"{i}", null));
        there.Learn(here.Known.Take(4));
        there.Write(new Noted("there", null));
        var history = CarHistory.Of(TestDevice.Car, [here.Known[5], there.Known[^1], here.Known[1]]);
        Assert.Equal(["2", "6", "there"], Notes(history).Order(StringComparer.Ordinal));
        Assert.True(Notes(history).ToList().IndexOf("2") < Notes(history).ToList().IndexOf("6"));
        Assert.Empty(history.Faults);
    }

    [Fact]
    public void References_in_a_circle_are_a_fault_and_all_entries_count()
    {
        var (a, b, c) = (new TestDevice("a"), new TestDevice("b"), new TestDevice("c"));
        var first = a.Write(new Noted("a", null));
        var second = b.Write(new Noted("b", null)) with { After = [first.Id] };
        c.Learn([second]);
        var innocent = c.Write(new Noted("c", null));
        first = first with { After = [second.Id] };
        var history = CarHistory.Of(TestDevice.Car, [innocent, second, first]);
        Assert.Equal(["a", "b", "c"], Notes(history));
        Assert.Contains(first.Id.ToString(), Assert.Single(history.Faults).Place, StringComparison.Ordinal);
    }

    [Fact]
    public void An_entry_that_names_itself_or_its_successor_is_a_fault()
    {
        var device = new TestDevice("a");
        var first = device.Write(new Noted("1", null));
        var second = device.Write(new Noted("2", null));
        Assert.Single(CarHistory.Of(TestDevice.Car, [first with { After = [first.Id] }]).Faults);
        var history = CarHistory.Of(TestDevice.Car, [first with { After = [second.Id] }, second]);
        Assert.Single(history.Faults);
        Assert.Equal(["1", "2"], Notes(history));
    }

    [Fact]
    public void Many_circles_and_long_ones_end()
    {
        const int Devices = 2_000;
        var entries = Enumerable.Range(0, Devices).Select(i => new TestDevice($"device-{i}", i).Write(new Noted($"{i}", null))).ToArray();
        var ring = entries.Select((entry, i) => entry with { After = [entries[(i + 1) % Devices].Id] }).ToArray();
        Assert.Single(EntryOrder.Of(ring).Faults);
        var pairs = entries.Select((entry, i) => entry with { After = [entries[i ^ 1].Id] }).ToArray();
        Assert.Equal(Devices / 2, EntryOrder.Of(pairs).Faults.Count);
        Assert.Equal(Devices, EntryOrder.Of(pairs).Entries.Count);
    }

    [Fact]
    public void A_forked_chain_is_a_fault_and_both_branches_count()
    {
        var device = new TestDevice("a");
        device.Write(new Noted("1", null));
        var copy = new TestDevice("a", seed: 7);
        copy.Learn(device.Known);
        device.Write(new Noted("2", null));
        copy.Write(new Noted("2 in the copy", null));
        var history = CarHistory.Of(TestDevice.Car, [.. device.Known, .. copy.Known]);
        Assert.Equal(3, history.Lines.Count);
        Assert.Equal("entry 2 of device a", Assert.Single(history.Faults).Place);
    }

    [Fact]
    public void Two_versions_of_one_entry_are_a_fault_and_the_same_one_counts_everywhere()
    {
        var entry = new TestDevice("a").Write(new Noted("as written", null));
        var forged = entry with { Payload = """{"text":"forged"}""" };
        var (one, other) = (CarHistory.Of(TestDevice.Car, [entry, forged]), CarHistory.Of(TestDevice.Car, [forged, entry]));
        Assert.Equal(one, other);
        Assert.Single(one.Faults);
        Assert.Single(one.Lines);
    }

    private static IEnumerable<string> Notes(CarHistory history) => history.Lines.Select(line => ((Noted)line.Happening!).Text);
}
