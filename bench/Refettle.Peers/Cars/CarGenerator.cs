namespace Refettle.Peers.Cars;

/// <summary>Makes cars out of chance, equal for equal shapes.</summary>
/// <remarks>
/// Parts lie in zones, numbered from the outside in; joints tie a part to deeper ones of its zone or to the body, and what is in the way of
/// a part or a joint lies mostly a few places further out. Everything can be reached: whatever lies
/// further in is only ever in the way of one method among several.
/// </remarks>
public sealed class CarGenerator
{
    private const string Body = "body";
    private const string BatteryOff = "battery-off";
    public const string OnStands = "on-stands";

    private readonly CarShape _shape;
    private readonly Random _chance;
    private readonly List<Part> _parts = [new() { Id = Body, Name = "Body shell", Fixed = true }];
    private readonly List<Joint> _joints = [];
    private readonly List<SubAssembly> _units = [];

    private CarGenerator(CarShape shape) => (_shape, _chance) = (shape, new(shape.Seed));

    public static Car Make(CarShape shape) => new CarGenerator(shape).Make();

    /// <summary>Facts worth asking for: parts free, parts off, spread over the car and mostly deep.</summary>
    public static ValueList<Fact> Goals(CarShape shape, int count)
    {
        var chance = new Random(shape.Seed * 31 + count);
        var goals = new HashSet<Fact>();
        while (goals.Count < count)
        {
            var depth = 1 - chance.NextDouble() * chance.NextDouble();
            var place = (int)(depth * (shape.ZoneSize - 1));
            var zone = chance.Next(shape.Zones);
            var number = zone * shape.ZoneSize + place;
            if (number < shape.Parts)
                goals.Add(chance.NextDouble() switch
                {
                    < 0.6 => Fact.Free(Name(number)),
                    < 0.9 => Fact.Off(Name(number)),
                    _ => Fact.Reach(SpaceOf(zone))
                });
        }

        return goals.ToValueList();
    }

    private static string Name(int number) => $"p{number}";

    private static string SpaceOf(int zone) => $"s{zone}";

    private Car Make()
    {
        for (var zone = 0; zone < _shape.Zones; zone++)
            AddSubAssemblies(zone);
        for (var number = 0; number < _shape.Parts; number++)
            AddPart(number);
        return new()
        {
            Id = "generated",
            Name = $"{_shape.Kind} car of {_shape.Parts} parts, seed {_shape.Seed}",
            Structure = new()
            {
                Zones = Enumerable.Range(0, _shape.Zones).Select(zone => new Zone { Id = $"z{zone}", Name = $"Zone {zone}" }).ToValueList(),
                States = [Preparation(BatteryOff, 3, stance: false), Preparation(OnStands, 15, stance: true)],
                Parts = _parts.ToValueList(),
                Joints = _joints.ToValueList(),
                SubAssemblies = _units.ToValueList(),
                Spaces = Enumerable.Range(0, _shape.Zones).Select(Cavity).ToValueList(),
            },
        };
    }

    private static State Preparation(string id, int minutes, bool stance) => new()
    {
        Id = id,
        Name = id,
        IsStance = stance,
        Ways = [new() { Id = "do", Tool = "hands", Open = new(minutes), Close = new(minutes) }],
    };

    private Space Cavity(int zone)
    {
        var last = Math.Min(_shape.Parts - zone * _shape.ZoneSize, _shape.ZoneSize);
        var parts = Enumerable.Range(0, 2).Select(_ => Name(zone * _shape.ZoneSize + _chance.Next(last))).Distinct();
        return new() { Id = SpaceOf(zone), Name = $"Space {zone}", ClosedBy = parts.ToValueList() };
    }

    private void AddPart(int number)
    {
        _parts.Add(new()
        {
            Id = Name(number),
            Name = $"Part {number}",
            Zone = $"z{number / _shape.ZoneSize}",
            Price = new(_chance.Next(5, 200)),
            Out = new() { Off = Some(1, 5), On = Some(1, 6), Clear = InTheWay(number, most: 2) },
        });
        foreach (var inner in Carriers(number))
            AddJoint(number, inner);
    }

    /// <summary>What a part is fastened to: one to three of the body and deeper parts of its zone.</summary>
    private List<string> Carriers(int number)
    {
        var last = Math.Min(_shape.Parts, (number / _shape.ZoneSize + 1) * _shape.ZoneSize) - 1;
        var deepest = Math.Min(last, number + Math.Min(_shape.Near, 12));
        var count = _chance.Next(1, 4);
        return Enumerable.Range(0, count)
            .Select(_ => deepest > number && _chance.NextDouble() < 0.7 ? Name(_chance.Next(number + 1, deepest + 1)) : Body)
            .Distinct().ToList();
    }

    private void AddJoint(int outer, string inner)
    {
        var cover = InTheWay(outer, most: 2);
        var ways = new List<Way> { OnCar("first", outer, cover) };
        if (_chance.NextDouble() < _shape.SeveralWays)
        {
            ways.Add(Another(outer, inner, cover));
            if (_chance.NextDouble() < 0.3)
                ways.Add(OnCar("third", outer, cover));
        }

        if (_chance.NextDouble() < _shape.Inward * 2)
            ways.Add(FromInside(outer));
        _joints.Add(new() { Id = $"j{_joints.Count}", Holds = [Name(outer), inner], Ways = ways.ToValueList() });
    }

    private Way Another(int outer, string inner, ValueList<Fact> cover) => _chance.Next(4) switch
    {
        0 when _units.Any(unit => unit.Members.Contains(Name(outer)) && unit.Members.Contains(inner)) =>
            new() { Id = "bench", Tool = "vice", Where = WorkPlace.OnBench, Open = Some(1, 6), Close = Some(1, 6) },
        1 => new() { Id = "cut", Tool = "saw", Open = Some(1, 8), Close = Some(2, 8), Clear = cover, Destroys = [Name(outer)] },
        _ => OnCar("second", outer, cover),
    };

    /// <summary>A way that needs what covers the joint off, as most ways do, and something of its own for its tool.</summary>
    private Way OnCar(string id, int outer, ValueList<Fact> cover)
    {
        var clear = cover.Concat(InTheWay(outer, most: 2)).ToHashSet();
        if (_chance.NextDouble() < 0.05)
            clear.Add(Fact.State(BatteryOff));
        else if (_chance.NextDouble() < 0.15)
            clear.Add(Fact.State(OnStands));
        return new() { Id = id, Tool = $"{_chance.Next(8, 20)} mm", Open = Some(2, 20), Close = Some(2, 25), Clear = clear.ToValueList() };
    }

    /// <summary>A quick way for whoever has already taken out something further in.</summary>
    private Way FromInside(int outer)
    {
        var last = Math.Min(_shape.Parts, (outer / _shape.ZoneSize + 1) * _shape.ZoneSize) - 1;
        var inner = Math.Min(last, outer + _chance.Next(1, _shape.Near + 1));
        var clear = inner > outer ? InTheWay(outer, most: 1).Append(Fact.Off(Name(inner))) : InTheWay(outer, most: 1);
        return new() { Id = "inside", Tool = "hands", Open = Some(1, 4), Close = Some(1, 4), Clear = clear.ToValueList() };
    }

    /// <summary>Parts further out, mostly a few places away in the same zone.</summary>
    private ValueList<Fact> InTheWay(int number, int most)
    {
        var place = number % _shape.ZoneSize;
        var found = new HashSet<Fact>();
        for (var count = place == 0 ? 0 : (int)((most + 1) * Math.Pow(_chance.NextDouble(), _shape.Sparsity)); count > 0; count--)
        {
            var outer = place - _chance.Next(1, Math.Min(place, _shape.Near) + 1);
            var zone = _chance.NextDouble() < CarShape.Elsewhere ? _chance.Next(_shape.Zones) : number / _shape.ZoneSize;
            if (zone * _shape.ZoneSize + outer < _shape.Parts)
                found.Add(Fact.Off(Name(zone * _shape.ZoneSize + outer)));
        }

        return found.ToValueList();
    }

    /// <summary>Runs of neighbours that can leave the car as one.</summary>
    private void AddSubAssemblies(int zone)
    {
        var size = Math.Min(_shape.ZoneSize, _shape.Parts - zone * _shape.ZoneSize);
        for (var count = Math.Max(1, size / 12); count > 0 && size >= 6; count--)
        {
            var members = _chance.Next(3, 6);
            var first = zone * _shape.ZoneSize + _chance.Next(size - members);
            _units.Add(new()
            {
                Id = $"u{_units.Count}",
                Name = $"Unit {_units.Count}",
                Members = Enumerable.Range(first, members).Select(Name).ToValueList(),
                Out = new() { Off = Some(2, 8), On = Some(3, 10), Clear = InTheWay(first, most: 2) },
            });
        }
    }

    private Minutes Some(int least, int most) => new(_chance.Next(least * 2, most * 2 + 1) / 2m);
}
