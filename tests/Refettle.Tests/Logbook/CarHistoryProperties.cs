using CsCheck;
using Refettle.Logbook;

namespace Refettle.Tests.Logbook;

public sealed class CarHistoryProperties
{
    private static readonly Gen<Entry[]> Shuffled = RandomLog.Entries.SelectMany(Gen.Shuffle);

    [Fact]
    public void Any_order_of_the_same_entries_gives_the_same_history() =>
        Gen.Select(RandomLog.Entries, Gen.Int).Sample((entries, seed) =>
        {
            var shuffled = entries.ToArray();
            new Random(seed).Shuffle(shuffled);
            Assert.Equal(History(entries), History([.. shuffled, .. entries.Take(3)]));
        });

    [Fact]
    public void Every_entry_comes_after_what_its_writer_knew() =>
        Shuffled.Sample(entries =>
        {
            var place = EntryOrder.Of(entries).Entries.Select((entry, i) => (entry.Id, i)).ToDictionary(pair => pair.Id, pair => pair.i);
            foreach (var entry in entries)
            {
                Assert.All(entry.After.Where(place.ContainsKey), before => Assert.True(place[before] < place[entry.Id]));
                var next = entries.FirstOrDefault(other => other.Device == entry.Device && other.Sequence == entry.Sequence + 1);
                Assert.True(next is null || place[entry.Id] < place[next.Id]);
            }
        });

    [Fact]
    public void Clocks_change_nothing_but_the_times_shown() =>
        Gen.Select(RandomLog.Entries, Gen.Int[-100_000, 100_000].Array[60]).Sample((entries, seconds) =>
        {
            var skewed = entries.Select((entry, i) => entry with { At = entry.At.AddSeconds(seconds[i % seconds.Length]) }).ToArray();
            Assert.Equal(History(entries).Car, History(skewed).Car);
            Assert.Equal(
                History(entries).Lines.Select(line => (line.Entry.Id, line.Standing)),
                History(skewed).Lines.Select(line => (line.Entry.Id, line.Standing)));
        });

    [Fact]
    public void Striking_the_newest_entry_gives_the_car_without_it() =>
        RandomLog.Entries.Sample(entries =>
        {
            var newest = EntryOrder.Of(entries).Entries[^1];
            var device = new TestDevice("other");
            device.Learn(entries);
            var strike = device.Write(new Struck(newest.Id, null));
            var without = History([.. entries.Where(entry => entry != newest)]).Car;
            Assert.Equal(without, device.History().Car);
            device.Write(new Struck(strike.Id, null));
            Assert.Equal(History(entries).Car, device.History().Car);
        });

    [Fact]
    public void Two_halves_that_meet_agree_with_one_who_saw_all() =>
        Gen.Select(Shuffled, Gen.Int[0, 60]).Sample((entries, cut) =>
        {
            var (here, there) = (new TestDevice("here"), new TestDevice("there"));
            here.Learn(entries.Take(cut));
            there.Learn(entries.Skip(cut));
            here.Learn(there.Known);
            there.Learn(here.Known);
            Assert.Equal(History(entries), here.History());
            Assert.Equal(here.History(), there.History());
        });

    [Fact]
    public void The_car_that_comes_out_refers_to_nothing_it_does_not_have() =>
        Gen.Select(Shuffled, Gen.Int[0, 60]).Sample((entries, count) =>
        {
            var car = History([.. entries.Take(count)]).Car;
            var parts = car.Structure.Parts.Select(part => part.Id).ToHashSet();
            Assert.All(car.Structure.Joints, joint => Assert.True(joint.Holds.Count >= 2 && joint.Holds.All(parts.Contains)));
            Assert.All(car.Structure.SubAssemblies, group => Assert.True(group.Members.Count >= 2 && group.Members.All(parts.Contains)));
            Assert.All(car.Structure.Spaces, space => Assert.True(space.ClosedBy.Count >= 1 && space.ClosedBy.All(parts.Contains)));
            Assert.All(car.Done.Where(fact => fact.Kind == FactKind.Free), fact => Assert.Contains(fact.Subject, parts));
            Assert.All(car.Unsound, part => Assert.Contains(part, parts));
        });

    [Fact]
    public void A_joint_is_never_closed_between_a_part_on_the_car_and_one_off_it() =>
        Shuffled.Sample(entries =>
        {
            var car = History(entries).Car;
            bool IsOff(string part) => car.Done.Contains(Fact.Off(part));
            Assert.All(car.Structure.Joints, joint => Assert.True(
                car.Done.Contains(Fact.Open(joint.Id)) || joint.Holds.All(IsOff) || !joint.Holds.Any(IsOff)));
        });

    [Fact]
    public void Every_chain_holds_and_every_change_to_one_is_found() =>
        Gen.Select(RandomLog.Entries, Gen.Int[0, 1000]).Sample((entries, number) =>
        {
            var seal = Seal.Of(entries);
            Assert.Empty(ChainCheck.Of(entries, seal));
            var victim = entries[number % entries.Length];
            var changed = entries.Select(entry => entry == victim ? entry with { Kind = "noted-otherwise" } : entry);
            Assert.Contains(ChainCheck.Of(changed, seal), found => found.Entry == victim.Id);
            var removed = entries.Where(entry => entry != victim);
            Assert.Contains(ChainCheck.Of(removed, seal), found => found.Kind == ChainBreakKind.Removed && found.Device == victim.Device);
        });

    private static CarHistory History(Entry[] entries) => CarHistory.Of(TestDevice.Car, entries);
}
