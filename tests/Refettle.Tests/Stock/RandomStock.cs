using CsCheck;
using Refettle.Logbook;

namespace Refettle.Tests.Stock;

/// <summary>Random stock entries of three devices in the logs of two cars, right and wrong ones mixed.</summary>
internal static class RandomStock
{
    public static readonly string[] Numbers = ["A-1", "A-2", "B-1", "KIT-1"];

    private static readonly string[] Things = ["part damper", "part tank", "joint wheel-axle", "part roof"];

    private sealed record Move(int Device, int Kind, bool Saloon, int Number, int Count, int Other);

    private static readonly Gen<Move> Moves =
        Gen.Select(Gen.Int[0, 2], Gen.Int[0, 19], Gen.Bool, Gen.Int[0, 3], Gen.Int[-1, 6], Gen.Int[0, 1000])
        .Select((device, kind, saloon, number, count, other) => new Move(device, kind, saloon, number, count, other));

    public static Gen<Entry[]> Entries { get; } = Moves.Array[0, 60].Select(Play);

    private static Entry[] Play(Move[] moves)
    {
        var devices = Enumerable.Range(0, 3).Select(i => new Garage($"device-{i}", i)).ToArray();
        devices[0].Opened();
        foreach (var move in moves)
            Play(move, devices[move.Device], devices);
        return [.. devices.SelectMany(device => device.Known).Distinct()];
    }

    private static void Play(Move move, Garage device, Garage[] devices)
    {
        var car = move.Saloon ? Garage.Saloon : Garage.Estate;
        var own = device.Known.Where(entry => entry.Car == car).ToList();
        if (move.Kind == 0)
            device.Learn(devices[move.Other % devices.Length].Known);
        else if (move.Kind == 1 && own.Count > 0)
            device.Write(car, new Struck(own[move.Other % own.Count].Id, null));
        else
            device.Write(car, Happening(move, Any(device, "ordered", move.Other), Any(device, "sent-out", move.Other)));
    }

    /// <summary>An entry of a kind that the device knows; now and then one that nobody wrote.</summary>
    private static Guid Any(Garage device, string kind, int other)
    {
        var known = device.Known.Where(entry => entry.Kind == kind).ToList();
        return known.Count == 0 || other % 9 == 0 ? Guid.Empty : known[other % known.Count].Id;
    }

    private static Happening Happening(Move move, Guid order, Guid sent)
    {
        var (number, count, day) = (Numbers[move.Number], move.Count, Garage.Day(move.Other % 30));
        var batch = new Batch(number, (PieceCondition)(move.Other % 3), move.Other % 2 == 0 ? null : Garage.Day(-(move.Other % 50)));
        var thing = Things[move.Other % Things.Length];
        var place = StockPlace.On(move.Saloon ? Garage.Estate : Garage.Saloon, thing);
        var own = StockPlace.On(move.Saloon ? Garage.Saloon : Garage.Estate, thing);
        return move.Kind switch
        {
            2 or 3 => new Ordered("Harbour Rubber", [new(number, count), new("Z-9", 2)], day, day.AddDays(move.Other % 20), 30, null),
            4 or 5 => new Arrived(order, [new(number, batch, count)], day),
            6 => new OrderCancelled(order, [new(number, count)]),
            7 => new SentBack(order, [new(number, batch, count)], day, null),
            8 => new PiecesMoved(batch, count, StockPlace.Shelf, own, day, null),
            9 => new PiecesMoved(batch, count, own, StockPlace.Shelf, day, null),
            10 => new PiecesMoved(batch, count, place, own, day, "robbed"),
            11 => new PiecesMoved(batch, count, StockPlace.Shelf, move.Other % 2 == 0 ? StockPlace.Scrapped : StockPlace.Broken, day, null),
            12 => new PiecesMoved(batch, count, StockPlace.Counting, StockPlace.Shelf, day, null),
            13 => new KitOpened(batch with { Number = "KIT-1" }, count,
                [new("A-1", batch with { Number = "A-1" }, 2 * count), new("B-1", batch with { Number = "B-1" }, count)]),
            14 => new MadeUp(new(number), count, [new("B-1", batch with { Number = "B-1" }, count)]),
            15 => new Reserved(thing, number, count),
            16 => new SentOut("Plater", "zinc", [new("pieces", count, batch, []), new("part tank", 1, null, ["photo-1"])], day, null, null),
            17 => new CameBack(sent,
                [new("pieces", count, batch with { Condition = PieceCondition.Refurbished }, "bright", move.Other % 3 > 0)], day),
            18 => new PiecesWanted(thing, count),
            _ => new NumberDescribed(new() { Id = number, ShelfLifeMonths = move.Other % 60 }, []),
        };
    }
}
