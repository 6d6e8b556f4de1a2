using CsCheck;
using Refettle.Bench;

namespace Refettle.Sheets.Tests;

/// <summary>Makes car sheets with every kind of thing in them, with names and figures at random.</summary>
internal static class AnySheet
{
    private static readonly string[] Odd =
        ["null", "true", "~", "1.5", "- x", "a: b", "x #y", "yes", "{p}", "\u2028x", "😀", "a\nb", "\u0085", "a\tb"];

    private static readonly Gen<string> Words = Gen.OneOf(
        Gen.Char["abc XYZ 019 '\"#:,[]{}&*!|>%@`-?\\äß·é漢"].Array[1, 12].Select(letters => new string(letters)),
        Gen.Int[0, Odd.Length - 1].Select(i => Odd[i]))
        .Select(text => text.Trim()).Where(text => text.Length > 0);

    private static readonly Gen<decimal> Figure = Gen.Int[1, 999_999].Select(value => value / 100m);

    private static readonly Gen<Origin> Origins = Gen.Enum<Origin>();

    public static Gen<CarSheet> Gen1 { get; } =
        from name in Words
        from year in Gen.Int[1900, 2030].Nullable()
        from parts in Gen.Int[2, 8]
        from structure in Structures(parts)
        select new CarSheet { Name = name, Year = year, Currency = "GBP", Structure = structure };

    private static Gen<Structure> Structures(int count) =>
        from parts in Gen.Select(Parts.Array[count], all => all.Select((part, i) => part with { Id = $"p{i}" }).ToValueList())
        from joints in Joints(count).Array[0, 8]
        from states in States.Array[0, 2]
        from unit in Words
        from end in Ends
        from limits in Limits
        select new Structure
        {
            Zones = [new() { Id = "z", Name = unit, Exposure = count % 5, Posture = "under" }],
            States = [.. states.Select((state, i) => state with { Id = $"s{i}" })],
            Parts = parts,
            Joints = [.. joints.Select((joint, i) => joint with { Id = $"j{i}" })],
            SubAssemblies = [new()
                { Id = "u", Name = unit, Members = ["p0", "p1"], Roles = ["r"], Out = parts[0].Out, Prop = unit, Kit = "k rl" }],
            Spaces = [new() { Id = "x", Name = unit, Zone = "z", ClosedBy = ["p1"], Kit = unit, Limits = limits }],
            LooseEnds = [end],
        };

    private static Gen<Part> Parts =>
        from name in Words
        from figures in Figure.Array[4]
        from side in Gen.Enum<Side>()
        from scarcity in Gen.Enum<Scarcity>()
        from hazards in Gen.Enum<Hazard>().Array[0, 3]
        from duties in Gen.Enum<Duty>().Array[0, 2]
        from isBare in Gen.Bool
        from origins in Origins.Array[2]
        from limits in Limits
        select new Part
        {
            Id = "",
            Name = name,
            Zone = isBare ? "car" : "z",
            Side = side,
            Count = isBare ? 1 : 4,
            Scarcity = scarcity,
            Mass = isBare ? null : new(figures[0]),
            Price = isBare ? null : new(figures[1]),
            Hazards = [.. hazards],
            Duties = [.. duties],
            Roles = isBare ? [] : ["r"],
            Kit = isBare ? null : name,
            Limits = limits,
            Prop = isBare ? null : name,
            Origin = origins[0],
            Out = isBare
                ? WayOut.AtOnce
                : new()
                {
                    Off = new(figures[2]),
                    On = new(figures[3]),
                    Tool = name,
                    Refit = Back(origins[0], name, new(figures[2])),
                    Cautions = [name, "b"],
                    Origin = origins[1]
                },
        };

    private static Gen<Joint> Joints(int parts) =>
        from kind in Gen.Enum<JointKind>()
        from words in Words.Array[3]
        from figure in Figure
        from ways in Ways.Array[1, 3]
        from other in Gen.Int[1, parts - 1]
        from flags in Gen.Bool.Array[3]
        from origin in Origins
        from limits in Limits
        select new Joint
        {
            Id = "",
            Kind = kind,
            Name = flags[0] ? words[0] : null,
            Holds = ["p0", $"p{other}"],
            Count = flags[1] ? 1 : 5,
            Thread = flags[1] ? words[1] : null,
            Grade = flags[2] ? words[2] : null,
            Torque = flags[2] ? new(figure) : null,
            SingleUse = flags[0],
            AtRideHeight = flags[1],
            Exposure = flags[2] ? 3 : null,
            Ways = [.. ways.Select((way, i) => way with { Id = $"w{i}", Destroys = flags[0] ? ["p1"] : [] })],
            Refit = flags[2] ? Back(origin, words[1], new(figure)) : null,
            Kit = flags[0] ? "k" : null,
            Limits = limits,
            Origin = origin,
        };

    private static RefitWay Back(Origin origin, string word, Minutes takes) =>
        origin == Origin.User ? new() { Tool = "hands", Takes = takes, Origin = origin }
        : new()
        {
            Tool = word,
            Takes = takes,
            Clear = [Fact.Reach("x")],
            Posture = "under",
            Cautions = [word, "c"],
            Danger = Danger.Heat | Danger.Flame,
            Origin = origin
        };

    private static Gen<ValueList<StatedLimit>> Limits =>
        from words in Words.Array[2]
        from unit in Gen.Int[0, Units.All.Count - 1]
        from ends in Figure.Array[2]
        from which in Gen.Int[0, 4]
        from origin in Origins.Where(origin => origin != Origin.Default)
        select which == 4 ? (ValueList<StatedLimit>)[] :
        [
            new(words[0], which == 0 ? null : -ends[0], which == 1 ? null : ends[1], Units.All[unit].Symbol, origin,
                which == 2 ? words[1] : null),
            .. which == 3 ? new[] { new StatedLimit($"{words[0]} too", ends[0], null, "mm", origin, null) } : [],
        ];

    private static Gen<Way> Ways =>
        from tool in Words
        from figures in Figure.Array[3]
        from odds in Gen.Int[0, 100]
        from flag in Gen.Bool
        from origin in Origins
        select new Way
        {
            Id = "",
            Tool = tool,
            Open = new(figures[0]),
            Close = new(figures[1]),
            Where = flag ? WorkPlace.OnBench : WorkPlace.OnCar,
            Clear = flag ? [Fact.Reach("x")] : [],
            Odds = flag ? odds / 100m : null,
            Spends = new(flag ? figures[2] : 0),
            Posture = flag ? "bench" : null,
            Cautions = flag ? [tool] : [],
            Danger = flag ? Danger.Spark | Danger.Cutting : null,
            Origin = origin,
        };

    private static Gen<State> States =>
        from name in Words
        from ways in Ways.Array[1, 2]
        from isStance in Gen.Bool
        select new State
        {
            Id = "",
            Name = name,
            IsStance = isStance,
            Ways = [.. ways.Select((way, i) => way with { Id = $"w{i}", Where = WorkPlace.OnCar })],
            Supports = isStance ? ["p0"] : [],
            Drains = isStance ? [] : [Hazard.Oil, Hazard.Fuel],
        };

    private static Gen<LooseEnd> Ends =>
        from words in Words
        from ways in Ways.Array[1]
        from spot in Gen.Enum<Spot>()
        select new LooseEnd
        {
            Kit = words,
            Hole = "hub",
            Role = "hub",
            Spot = spot,
            Prefix = spot == Spot.None ? "" : "rl-",
            IsOptional = spot == Spot.Left,
            Meanwhile = words,
            Waits = new()
            {
                Joints = [new()
                    { Id = "w", Holds = ["p0", "{hub}"], Ways = [ways[0] with { Id = "w0", Tool = "hands", Cautions = [] }] }]
            },
            Mentions = [new("part p0", "out.clear", "off({hub})")],
        };
}
