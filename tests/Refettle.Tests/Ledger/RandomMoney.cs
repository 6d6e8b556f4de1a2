using CsCheck;
using Refettle.Logbook;
using Refettle.Tests.Stock;

namespace Refettle.Tests.Ledger;

/// <summary>Random orders, arrivals, returns, outside work, receipts, timed work and strikes in the logs of two cars.</summary>
internal static class RandomMoney
{
    private static readonly string[] Numbers = ["A-1", "B-1"];

    public static Gen<Entry[]> Entries { get; } =
        Gen.Select(Gen.Int[0, 12], Gen.Bool, Gen.Int[1, 6], Gen.Int[0, 1000]).Array[0, 50].Select(moves =>
        {
            var garage = new Garage("bench").Opened();
            foreach (var (kind, isSaloon, count, other) in moves)
                Play(garage, kind, isSaloon ? Garage.Saloon : Garage.Estate, count, other);
            return garage.Known.ToArray();
        });

    private static void Play(Garage garage, int kind, string car, int count, int other)
    {
        var own = garage.Known.Where(entry => entry.Car == car).ToList();
        var order = Any(garage, null, "ordered", other);
        var settles = other % 3 == 0 ? Any(garage, car, other % 2 == 0 ? "ordered" : "sent-out", other) : Guid.Empty;
        var (number, day) = (Numbers[other % 2], Garage.Day(other % 30));
        garage.Write(car, kind switch
        {
            0 or 1 => new Ordered("Harbour Rubber", [new("A-1", count, new(2.5m)), new("B-1", 2, other % 4 == 0 ? null : new Money(7))],
                day, null, 30, other % 2 == 0 ? new Money(6) : null),
            2 or 3 => new Arrived(order, [new(number, new(number), count)], day),
            4 => new OrderCancelled(order, [new(number, count)]),
            5 => new SentBack(order, [new(number, new(number), count)], day, null),
            6 => new SentOut("Plater", "zinc", [new("part tank", 1, null, []), new("bolts", 8, null, [])], day, null,
                other % 3 == 0 ? null : new Money(80)),
            7 => new CameBack(Any(garage, null, "sent-out", other),
                [new("part tank", 1, null, "good", true), new("bolts", count + 2, null, "good", true)], day),
            8 or 9 => new MoneySpent(new(new(count * 10.25m), "something", (SpendKind)(other % 5), null,
                settles == Guid.Empty ? null : settles, null, day, other % 7 == 0)),
            10 => new StepDone(Fact.Open("tank-body"), "spanner", new(count)),
            11 => new Tried(new("tank-body", "impact", null, false, new(count))),
            _ => new Struck(own[other % own.Count].Id, null),
        });
    }

    private static Guid Any(Garage garage, string? car, string kind, int other)
    {
        var known = garage.Known.Where(entry => entry.Kind == kind && (car is null || entry.Car == car)).ToList();
        return known.Count == 0 ? Guid.Empty : known[other % known.Count].Id;
    }
}
