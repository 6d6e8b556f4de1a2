using Refettle.Sheets.Tree;

namespace Refettle.Sheets.Reading;

/// <summary>Reads ways: a list below <c>ways</c>, or the keys of one way among the keys of the thing.</summary>
internal static class WayReader
{
    private static readonly string[] _keys =
        ["id", "tool", "open", "close", "clear", "where", "odds", "destroys", "spends", "posture", "cautions", "danger"];

    /// <summary>The ways; null when none are given at all.</summary>
    public static ValueList<Way>? Ways(Fields fields)
    {
        var inline = _keys.Where(fields.Has).ToArray();
        var listed = fields.Take("ways");
        if (listed is null)
            return inline.Length > 0 ? [Way(fields, [])] : null;
        if (inline.Length > 0)
            fields.Fault(listed, $"there are ways and also {string.Join(", ", inline)} beside them", "Move these into one of the ways");
        return List(listed, fields);
    }

    /// <summary>Null where nothing is said.</summary>
    public static Danger? Dangers(Fields fields) =>
        fields.Words<Danger>("danger") is { Count: > 0 } said ? said.Aggregate(Danger.None, (all, one) => all | one) : null;

    private static ValueList<Way> List(Node listed, Fields fields)
    {
        var ways = new List<Way>();
        foreach (var item in listed is Sequence list ? list.Items : [listed])
        {
            if (item is not Mapping map)
            {
                fields.Fault(item, "a way is not a set of keys", "Write - { tool: …, open: 6 min, close: 8 min }");
                continue;
            }

            var keys = new Fields(map, fields.Place, fields.Context);
            ways.Add(Way(keys, ways));
            keys.Done();
        }

        return ways.ToValueList();
    }

    private static Way Way(Fields fields, List<Way> before)
    {
        foreach (var key in (string[])["open", "close"])
        {
            if (!fields.Has(key))
                fields.Missing(key, "5 min");
        }

        var tool = fields.Text("tool") ?? "hands";
        return new()
        {
            Id = fields.Identifier("id", IdFrom(tool, before)),
            Tool = tool,
            Open = fields.Minutes("open") ?? Minutes.Zero,
            Close = fields.Minutes("close") ?? Minutes.Zero,
            Clear = fields.Facts("clear"),
            Where = fields.Word("where", WorkPlace.OnCar),
            Odds = fields.Number("odds"),
            Destroys = fields.Identifiers("destroys"),
            Spends = fields.Money("spends") ?? default,
            Posture = fields.Text("posture"),
            Cautions = fields.Texts("cautions"),
            Danger = Dangers(fields),
            Origin = fields.Word("origin", fields.Context.Given),
        };
    }

    /// <summary>An identifier made from the tool that no earlier way of the thing has.</summary>
    private static string IdFrom(string tool, List<Way> before)
    {
        var id = Identifier.From(tool) is { Length: > 0 } near ? near : "way";
        var unique = id;
        for (var i = 2; before.Any(way => way.Id == unique); i++)
            unique = $"{id}-{i}";
        return unique;
    }
}
