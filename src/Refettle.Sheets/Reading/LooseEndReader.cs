using Refettle.Sheets.Tree;

namespace Refettle.Sheets.Reading;

/// <summary>Reads the loose ends that a car was written with.</summary>
internal static class LooseEndReader
{
    public static ValueList<LooseEnd> Read(Fields root)
    {
        var ends = Items(root, "loose-ends").ToArray();
        var holes = ends.Select(end => end.Text("hole")).OfType<string>().ToHashSet();
        return ends.Select(end => One(end, end.Context with { Braces = holes })).ToValueList();
    }

    private static LooseEnd One(Fields fields, Context inside)
    {
        var end = new LooseEnd
        {
            Kit = fields.Needed("kit", "the kit that asks"),
            Hole = fields.Needed("hole", "the name of the hole"),
            Role = fields.Needed("role", "what the part must be"),
            Spot = SpotOf(fields),
            Prefix = fields.Text("prefix") ?? "",
            IsOptional = fields.Flag("optional"),
            Meanwhile = fields.Text("meanwhile") ?? "",
            Waits = fields.Below("waits") is { } waits ? Waiting(new(waits.Map, fields.Place, inside)) : Structure.Empty,
            Mentions = Items(fields, "mentions").Select(Mention).ToValueList(),
        };
        fields.Done();
        return end;
    }

    private static Structure Waiting(Fields fields)
    {
        var waits = new Structure
        {
            Joints = StructureReader.Each(fields, "joints", "joint", new(), JointReader.Read),
            SubAssemblies = StructureReader.Each(fields, "sub-assemblies", "sub-assembly", new(), UnitReader.Read),
            Spaces = StructureReader.Each(fields, "spaces", "space", new(), (id, space) => SpaceReader.Read(id, space, Zone.WholeCar)),
        };
        fields.Done();
        return waits;
    }

    private static Mention Mention(Fields fields)
    {
        var mention = new Mention(
            fields.Needed("thing", "part x"), fields.Needed("list", "out.clear"), fields.Needed("text", "\"off({wheel})\""));
        fields.Done();
        return mention;
    }

    private static Spot SpotOf(Fields fields)
    {
        var text = fields.Text("side");
        if (!Spots.TryParse(text, out var spot) && text is not null)
            fields.Fault(fields.Take("side")!, $"\"{text}\" is not a side", "Write fl, fr, rl, rr, left or right");
        return spot;
    }

    private static IEnumerable<Fields> Items(Fields fields, string key)
    {
        foreach (var item in fields.Take(key) is Sequence list ? list.Items : fields.Take(key) is { } lone ? [lone] : [])
        {
            if (item is Mapping map)
                yield return new(map, key.TrimEnd('s'), fields.Context);
            else
                fields.Fault(item, $"an item of {key} is not a set of keys", "Write - with keys below it");
        }
    }
}
