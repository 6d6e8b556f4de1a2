using System.Security.Cryptography;
using Refettle.Logbook;
using Refettle.Storage;

namespace Refettle.Bench;

/// <summary>A seeded log like years of work on one car: 300 parts and 600 joints, then steps, refits, notes
/// and undoings from three devices.</summary>
internal static class BigLog
{
    private const int Parts = 300;
    private const int Joints = 600;
    private const int Batch = 5_000;

    public static void Write(string path, string car, int count)
    {
        using var logbook = LogbookStore.Open(path, TimeProvider.System, RandomNumberGenerator.Create()).Value;
        foreach (var batch in Entries(car, count).Chunk(Batch))
            _ = logbook.Append(batch).Value;
    }

    public static IEnumerable<Entry> Entries(string car, int count)
    {
        var random = new Random(1);
        var writers = new[] { "laptop", "phone", "tablet" }
            .Select(device => new LogWriter(device, TimeProvider.System, RandomNumberGenerator.Create())).ToArray();
        var ends = writers.Select(_ => LogEnd.Empty).ToArray();
        Entry? last = null;
        for (var i = 0; i < count; i++)
        {
            var who = random.Next(20) == 0 ? random.Next(writers.Length) : i / 50 % writers.Length;
            var end = last is null || last.Device == writers[who].Device ? ends[who] : ends[who] with { News = [last.Id] };
            last = writers[who].Next(car, end, Happening(i, random, last));
            ends[who] = new(last, []);
            yield return last;
        }
    }

    private static Happening Happening(int i, Random random, Entry? last) => (i, random.Next(20)) switch
    {
        (0, _) => new CarOpened("Calder Heron 2.2", 1988, "EUR"),
        (1, _) => new StructureAdded("sheet big.yaml", Structure(random), []),
        (_, 0) => new Struck(last!.Id, "by mistake"),
        (_, 1) => new Noted("Threads dirty, cleaned with a brush; washer was missing on the inner side.", $"part p{random.Next(Parts)}"),
        (_, < 5) => new StepDone(Fact.Off($"p{random.Next(1, Parts)}"), null, new(random.Next(1, 60))),
        (_, < 12) => new StepDone(Fact.Open($"j{random.Next(Joints)}"), "spanner", new(random.Next(1, 60))),
        (_, < 15) => new StepReversed(Fact.Off($"p{random.Next(1, Parts)}"), null),
        _ => new StepReversed(Fact.Open($"j{random.Next(Joints)}"), new(random.Next(1, 60))),
    };

    private static Structure Structure(Random random) => new()
    {
        Parts = Enumerable.Range(0, Parts).Select(i => new Part { Id = $"p{i}", Name = $"Part {i}", Fixed = i == 0 }).ToValueList(),
        Joints = Enumerable.Range(0, Joints).Select(i => new Joint
        {
            Id = $"j{i}",
            Holds = [$"p{i % Parts}", $"p{((i % Parts) + 1 + random.Next(Parts - 1)) % Parts}"],
            Ways = [new() { Id = "spanner", Tool = "13 mm spanner", Open = new(5), Close = new(6) }],
        }).ToValueList(),
    };
}
