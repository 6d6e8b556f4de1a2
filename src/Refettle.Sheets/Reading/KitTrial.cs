using Refettle.Kits;

namespace Refettle.Sheets.Reading;

/// <summary>Adds a kit to a started car on each of its sides, once with every hole filled and once with none.</summary>
internal static class KitTrial
{
    public static void Run(Kit kit, Structure start, Places places, Tree.FaultList faults)
    {
        var seen = new HashSet<(int, int, string)>();
        foreach (var spot in kit.Spots.Count == 0 ? [Spot.None] : kit.Spots)
        {
            foreach (var isFilled in (bool[])[true, false])
            {
                foreach (var fault in Try(kit, start, spot, isFilled).Select(fault => places.Locate(Home(fault, kit, spot))))
                {
                    if (seen.Add((fault.Line, fault.Column, fault.Path)))
                        faults.Add(fault);
                }
            }
        }
    }

    private static ValueList<Fault> Try(Kit kit, Structure start, Spot spot, bool isFilled)
    {
        var car = isFilled ? kit.Holes.Aggregate(start, (car, hole) => car.With(Other(hole, spot))) : start;
        var choices = kit.Holes.ToDictionary(hole => hole.Name, hole => isFilled ? OtherId(hole) : "");
        return KitAddition.Propose(car, kit, spot, null, choices).Faults;
    }

    private static string OtherId(Hole hole) => $"other-{hole.Name}";

    /// <summary>What fills a hole, as some other kit would bring it: a part, or a sub-assembly with two parts.</summary>
    private static Structure Other(Hole hole, Spot spot)
    {
        Part[] parts = [.. ((string[])["", "-2"])
            .Select(end => new Part { Id = OtherId(hole) + end, Name = hole.Role, Side = hole.SpotFor(spot).Side() })];
        if (hole.Joins.Count == 0)
            return new() { Parts = [parts[0]] };
        Part[] members = [parts[0] with { Id = OtherId(hole) + "-1" }, parts[1]];
        return new()
        {
            Parts = [.. members],
            SubAssemblies = [new() { Id = OtherId(hole), Name = hole.Role, Members = [.. members.Select(part => part.Id)] }],
        };
    }

    /// <summary>The fault with the thing as the kit's file names it.</summary>
    private static Fault Home(Fault fault, Kit kit, Spot spot)
    {
        var values = new Dictionary<string, string> { ["p"] = spot == Spot.None ? "" : spot.Code() + "-", ["side"] = spot.Code() };
        values["zone"] = Braces.Fill(kit.Zone, values);
        var template = kit.Template;
        var things = template.Parts.Select(part => ("part", part.Id)).Concat(template.Joints.Select(joint => ("joint", joint.Id)))
            .Concat(template.States.Select(state => ("state", state.Id))).Concat(template.Zones.Select(zone => ("zone", zone.Id)))
            .Concat(template.Spaces.Select(space => ("space", space.Id)))
            .Concat(template.SubAssemblies.Select(unit => ("sub-assembly", unit.Id)));
        var (kind, id) = things.FirstOrDefault(thing => $"{thing.Item1} {Braces.Fill(thing.Id, values)}" == fault.Place);
        return kind is null ? fault : fault with { Place = $"{kind} {id}" };
    }
}
