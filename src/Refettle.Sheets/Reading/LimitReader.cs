using Refettle.Bench;
using Refettle.Sheets.Tree;

namespace Refettle.Sheets.Reading;

/// <summary>Reads the limits of a part, joint or space: a list below <c>limits</c>, or the keys of one.</summary>
internal static class LimitReader
{
    /// <summary>Digits that a written sheet keeps.</summary>
    private const int MostDecimals = 12;

    /// <summary>One that cannot be read leaves one without further faults in its place, so that those after it keep theirs.</summary>
    public static ValueList<StatedLimit> Limits(Fields fields)
    {
        var limits = new List<StatedLimit>();
        foreach (var item in fields.Take("limits") is Sequence list ? list.Items : fields.Take("limits") is { } lone ? [lone] : [])
        {
            var unread = new StatedLimit($"limit {limits.Count + 1}", 0, null, Units.One.Symbol, Origin.User, null);
            limits.Add(item is Mapping map ? Limit(new(map, fields.Place, fields.Context), unread) : unread);
            if (item is not Mapping)
                fields.Fault(item, "a limit is not a set of keys",
                    "Write - { what: axial play, most: 0.5 mm, origin: maker, source: manual page }");
        }

        return limits.ToValueList();
    }

    private static StatedLimit Limit(Fields fields, StatedLimit unread)
    {
        if (!fields.Has("what"))
            fields.Missing("what", "axial play");
        var said = unread with
        {
            What = fields.Text("what") ?? unread.What,
            Origin = fields.Word("origin", fields.Context.Given),
            Source = fields.Text("source")
        };
        var (least, most) = (End(fields, "least"), End(fields, "most"));
        var isRead = (least is null != fields.Has("least")) && (most is null != fields.Has("most"));
        fields.Done();
        var unit = (least ?? most)?.Unit ?? Units.One;
        if (isRead && most is { } end && end.Unit.Dimension != unit.Dimension)
            fields.Fault(fields.Take("most")!, $"most is in {end.Unit.Symbol}, least in {unit.Symbol}",
                "Give both ends in units of one kind");
        else if (isRead)
            return said with { Lower = In(least, unit), Upper = In(most, unit), Unit = unit.Symbol };
        return said;
    }

    private static Measure? End(Fields fields, string key)
    {
        if (fields.Text(key) is not { } text)
            return null;
        var read = Measure.Read(key, text, null);
        if (read.IsGood && Math.Abs(read.Value.Value) < 1e12)
            return read.Value;
        fields.Fault(fields.Take(key)!, $"{key}: {(read.IsGood ? $"'{text}' is out of any range" : read.Faults[0].Found)}",
            "Write a number with its unit, like 0.5 mm");
        return null;
    }

    private static decimal? In(Measure? end, Unit unit) =>
        end is { } measure ? decimal.Round((decimal)measure.In(unit), MostDecimals) : null;
}
