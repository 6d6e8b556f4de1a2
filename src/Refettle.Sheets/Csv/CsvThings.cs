using Refettle.Sheets.Reading;
using Refettle.Sheets.Tree;

namespace Refettle.Sheets.Csv;

/// <summary>Turns rows into the shape of the sections of a car sheet, so that the same reader reads both.</summary>
internal sealed class CsvThings(FaultList faults)
{
    public static readonly string[] PartColumns =
        ["id", "name", "zone", "side", "count", "scarcity", "mass", "price", "hazards", "duties", "roles", "fixed", "origin", .. OutColumns,
            .. RefitColumns];

    public static readonly string[] JointColumns =
        ["id", "kind", "name", "holds", "count", "thread", "grade", "torque", "single-use", "at-ride-height", "exposure", "origin",
            .. WayColumns, .. RefitColumns];

    private static string[] OutColumns => ["off", "on", "clear", "tool", "prop", "cautions"];

    private static string[] WayColumns =>
        ["way", "tool", "open", "close", "clear", "where", "odds", "destroys", "spends", "posture", "cautions", "danger"];

    private static string[] RefitColumns => [.. RefitKeys.All.Select(key => $"{RefitKeys.Prefix}{key}")];

    private static readonly string[] _lists = ["hazards", "duties", "roles", "clear", "cautions", "holds", "destroys", "danger"];

    /// <summary>A part for each row; a row without identifier gets one from its name.</summary>
    public Mapping Parts(List<Mapping> rows)
    {
        var pairs = new List<Pair>();
        var lines = new Dictionary<string, int>();
        foreach (var row in rows)
        {
            var id = Id(row, Text(row, "name"));
            if (id is null)
                faults.Add(row, "row", "it has neither id nor name", "Give the part a name");
            else if (!lines.TryAdd(id.Text, id.Line))
                faults.Add(id, $"part {id.Text}", $"it is here already, on line {lines[id.Text]}", "Give each part its own id");
            else
                pairs.Add(new(id, Nested(WithRefit(row), [.. OutColumns, RefitKeys.Name], "out", many: false)));
        }

        return new(1, 1, pairs);
    }

    /// <summary>A joint for each identifier; further rows with the same one are further ways to open it.</summary>
    public Mapping Joints(List<Mapping> rows)
    {
        var pairs = new List<Pair>();
        var index = new Dictionary<string, int>();
        foreach (var row in rows)
        {
            if (row.Find("id") is { Value: Scalar given } && index.TryGetValue(given.Text, out var at))
                pairs[at] = WithWay(pairs[at], row);
            else if (Id(row, Unique(Text(row, "name") ?? Text(row, "holds"), index)) is { } id && index.TryAdd(id.Text, pairs.Count))
                pairs.Add(new(id, Nested(WithRefit(row), WayColumns, "ways", many: true)));
            else
                faults.Add(row, "row", "it has neither id, name nor holds", "Name the parts that the joint holds");
        }

        return new(1, 1, pairs);
    }

    private Pair WithWay(Pair joint, Mapping row)
    {
        var (first, more) = ((Mapping)joint.Value, Nested(WithRefit(row), WayColumns, "ways", many: true));
        foreach (var pair in more.Pairs.Where(pair => pair.Key.Text != "ways" && !Says(first, pair)))
            faults.Add(pair.Value, $"joint {joint.Key.Text}", $"a further way says something else about {pair.Key.Text}",
                "Leave it empty: only the first row describes the joint itself");
        var ways = new Sequence(row.Line, row.Column, [.. Ways(first), .. Ways(more)]);
        Pair[] keys = [.. first.Pairs.Where(pair => pair.Key.Text != "ways"), new(new(row.Line, 1, "ways", true), ways)];
        return joint with { Value = first with { Pairs = keys } };
    }

    private static bool Says(Mapping joint, Pair pair) =>
        joint.Find(pair.Key.Text) is { } said && Words(said.Value).SequenceEqual(Words(pair.Value));

    private static IEnumerable<string> Words(Node node) =>
        node switch
        {
            Sequence list => list.Items.SelectMany(Words),
            Mapping keys => keys.Pairs.SelectMany(pair => Words(pair.Value).Prepend(pair.Key.Text)),
            Scalar scalar => [scalar.Text],
            _ => [],
        };

    private static IReadOnlyList<Node> Ways(Mapping joint) => joint.Find("ways")?.Value is Sequence ways ? ways.Items : [];

    /// <summary>The row with the columns of its refit way below a key of their own.</summary>
    private static Mapping WithRefit(Mapping row)
    {
        var columns = row.Pairs.Where(pair => RefitKeys.Is(pair.Key.Text)).Select(RefitKeys.Plain)
            .Select(pair => pair with { Value = Split(pair) }).ToArray();
        return columns.Length == 0
            ? row
            : row with { Pairs = [.. row.Pairs.Where(pair => !RefitKeys.Is(pair.Key.Text)), RefitKeys.Below(columns)] };
    }

    /// <summary>The row with some of its columns below a key of their own, and lists taken apart.</summary>
    private static Mapping Nested(Mapping row, string[] columns, string key, bool many)
    {
        var cells = row.Pairs.Where(pair => pair.Key.Text != "id").Select(pair => pair with { Value = Split(pair) }).ToArray();
        var inner = cells.Where(pair => columns.Contains(pair.Key.Text))
            .Select(pair => pair.Key.Text == "way" ? pair with { Key = pair.Key with { Text = "id" } } : pair).ToArray();
        var outer = cells.Where(pair => !columns.Contains(pair.Key.Text));
        if (inner.Length == 0)
            return row with { Pairs = [.. outer] };
        Node below = new Mapping(row.Line, inner[0].Key.Column, inner);
        return row with
        {
            Pairs = [.. outer,
                new(new(row.Line, inner[0].Key.Column, key, true), many ? new Sequence(row.Line, below.Column, [below]) : below)]
        };
    }

    private static Node Split(Pair pair) => !_lists.Contains(pair.Key.Text) || pair.Value is not Scalar cell ? pair.Value
        : new Sequence(cell.Line, cell.Column,
            [.. cell.Text.Split(';', '|').Select(item => item.Trim()).Where(item => item.Length > 0)
                .Select(item => cell with { Text = item })]);

    private static Scalar? Id(Mapping row, string? name)
    {
        if (row.Find("id")?.Value is Scalar given)
            return given;
        var id = Identifier.From(name ?? "");
        return id.Length == 0 ? null : new(row.Line, 1, id, Quoted: true);
    }

    private static string Unique(string? name, Dictionary<string, int> taken)
    {
        var id = Identifier.From(name ?? "");
        return id.Length == 0 || !taken.ContainsKey(id) ? id : $"{id}-{taken.Count + 1}";
    }

    private static string? Text(Mapping row, string key) => (row.Find(key)?.Value as Scalar)?.Text;
}
