using CsCheck;
using Refettle.Logbook;

namespace Refettle.Tests.Logbook;

/// <summary>Random logs of several devices about <see cref="SmallCar"/>: each writes, learns from others, strikes what it knows.</summary>
internal static class RandomLog
{
    private static readonly Fact[] Facts =
    [
        Fact.Off("axle"), Fact.Off("damper"), Fact.Off("wheel"), Fact.Off("tank"), Fact.Off("axle-unit"), Fact.Off("body"),
        Fact.Off("roof"),
        Fact.Free("damper"), Fact.Reach("floor"), Fact.Open("axle-body"), Fact.Open("damper-axle"), Fact.Open("tank-body"),
        Fact.State("battery-off"), Fact.State("on-stands"),
    ];

    private static readonly Gen<Happening> Happenings = Gen.Frequency(
        (6, Pick(Facts).Select(Gen.Int[0, 90], (fact, minutes) => (Happening)new StepDone(fact, null, new(minutes)))),
        (4, Pick(Facts).Select(fact => (Happening)new StepReversed(fact, null))),
        (1, Pick<Happening>(new StanceTaken("on-stands"), new StanceTaken("on-wheels"), new StanceTaken("flying"))),
        (1, Pick<Happening>(new SoundnessJudged("body", false), new SoundnessJudged("body", true))),
        (1, Pick<Happening>(new StructureRemoved(["part tank"]), new StructureRemoved(["joint wheel-axle", "part damper"]))),
        (1, Pick<Happening>(new StructureAdded("sheet small.yaml", SmallCar.Structure, []))),
        (1, Pick<Happening>(new BagPacked("1", "nuts", ["joint tank-body"], null), new BagPacked("1", null, ["part damper"], "shelf"),
            new BagMoved("1", "box"), new BagEmptied("1"))),
        (1, Gen.Int[1, 90].Select(rate => (Happening)new SettingsChosen(new() { PerHour = new(rate) }))),
        (1, Gen.String[Gen.Char, 0, 8].Select(text => (Happening)new Noted(text, null))));

    /// <summary>What one device does next: writes, strikes its known entry number so many, or learns all that another knows.</summary>
    private sealed record Move(int Device, int Kind, Happening Happening, int Number);

    private static readonly Gen<Move> Moves = Gen.Select(Gen.Int[0, 2], Gen.Int[0, 5], Happenings, Gen.Int[0, 1000])
        .Select((device, kind, happening, number) => new Move(device, kind, happening, number));

    /// <summary>All entries of up to three devices, whose clocks may be days apart.</summary>
    public static Gen<Entry[]> Entries { get; } = Gen.Select(Moves.Array[0, 40], Gen.Int[-2, 2].Array[3]).Select(Play);

    private static Gen<T> Pick<T>(params T[] items) => Gen.Int[0, items.Length - 1].Select(i => items[i]);

    private static Entry[] Play(Move[] moves, int[] daysOff)
    {
        var devices = daysOff.Select((days, i) => new TestDevice($"device-{i}", i, TimeSpan.FromDays(days))).ToArray();
        foreach (var happening in SmallCar.Opening)
            devices[0].Write(happening);
        foreach (var move in moves)
            Play(move, devices);
        return [.. devices.SelectMany(device => device.Known).Distinct()];
    }

    private static void Play(Move move, TestDevice[] devices)
    {
        var device = devices[move.Device];
        if (move.Kind == 0)
            device.Learn(devices[move.Number % devices.Length].Known);
        else if (move.Kind == 1 && device.Known.Count > 0)
            device.Write(new Struck(device.Known[move.Number % device.Known.Count].Id, null));
        else
            device.Write(move.Happening);
    }
}
