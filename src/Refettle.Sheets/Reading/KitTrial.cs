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
                    if (seen.Add((fault.Line, fault.Column, fault.Mend)))
                        faults.Add(fault);
                }
            }
        }
    }

    private static ValueList<Fault> Try(Kit kit, Structure start, Spot spot, bool isFilled)
    {
        var stubs = isFilled ? kit.Holes.Select(hole => Stub(hole, spot)).ToValueList() : [];
        var choices = kit.Holes.ToDictionary(hole => hole.Name, hole => isFilled ? Stub(hole, spot).Id : "");
        var addition = KitAddition.Propose(start.With(new() { Parts = stubs }), kit, spot, null, choices);
        return addition.Faults;
    }

    /// <summary>A part that fills a hole, as some other kit would bring it.</summary>
    private static Part Stub(Hole hole, Spot spot) =>
        new() { Id = $"other-{hole.Name}", Name = hole.Role, Roles = [hole.Role], Side = hole.SpotFor(spot).Side() };

    /// <summary>The fault with the thing as the kit's file names it.</summary>
    private static Fault Home(Fault fault, Kit kit, Spot spot)
    {
        var values = new Dictionary<string, string> { ["p"] = spot == Spot.None ? "" : spot.Code() + "-", ["side"] = spot.Code() };
        values["zone"] = Braces.Fill(kit.Zone, values);
        var template = kit.Template;
        var things = template.Parts.Select(part => ("part", part.Id)).Concat(template.Joints.Select(joint => ("joint", joint.Id)))
            .Concat(template.States.Select(state => ("state", state.Id))).Concat(template.Zones.Select(zone => ("zone", zone.Id)))
            .Concat(template.Spaces.Select(space => ("space", space.Id))).Concat(template.SubAssemblies.Select(unit => ("sub-assembly", unit.Id)));
        var (kind, id) = things.FirstOrDefault(thing => $"{thing.Item1} {Braces.Fill(thing.Id, values)}" == fault.Place);
        return kind is null ? fault : fault with { Place = $"{kind} {id}" };
    }
}
