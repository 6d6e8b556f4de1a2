using Refettle.Sheets.Tree;

namespace Refettle.Sheets.Reading;

/// <summary>Reads the sections that describe a car: zones, states, parts, joints, sub-assemblies, spaces.</summary>
internal static class StructureReader
{
    /// <summary>A structure of all that could be read, also when there are faults, so that these do not draw others after them.</summary>
    public static Structure Read(Fields root, Places places, string? zone = null) => new()
    {
        Zones = Each(root, "zones", "zone", places, ZoneReader.Read),
        States = Each(root, "states", "state", places, StateReader.Read),
        Parts = Each(root, "parts", "part", places, (id, fields) => PartReader.Read(id, fields, zone ?? Zone.WholeCar)),
        Joints = Each(root, "joints", "joint", places, JointReader.Read),
        SubAssemblies = Each(root, "sub-assemblies", "sub-assembly", places, UnitReader.Read),
        Spaces = Each(root, "spaces", "space", places, (id, fields) => SpaceReader.Read(id, fields, zone ?? Zone.WholeCar)),
    };

    /// <summary>Reads a section: a map from identifier to description.</summary>
    public static ValueList<T> Each<T>(Fields root, string section, string kind, Places places, Func<string, Fields, T> read)
    {
        var things = new List<T>();
        foreach (var pair in root.Below(section)?.Map.Pairs ?? [])
        {
            var place = $"{kind} {pair.Key.Text}";
            root.Context.Identifier(pair.Key, place);
            places.Add(place, pair);
            if (Described(pair, place, root.Context) is not { } map)
                continue;
            var fields = new Fields(map, place, root.Context);
            things.Add(read(pair.Key.Text, fields));
            fields.Done();
        }

        return things.ToValueList();
    }

    /// <summary>The keys of a thing; a thing left empty has none.</summary>
    private static Mapping? Described(Pair pair, string place, Context context)
    {
        if (pair.Value is Mapping map)
            return map;
        if (pair.Value is Scalar { IsNothing: true })
            return new(pair.Key.Line, pair.Key.Column, []);
        context.Faults.Add(pair.Value, place, "it has a value where its description should be", "Write keys below it, or { name: … }");
        return null;
    }
}
