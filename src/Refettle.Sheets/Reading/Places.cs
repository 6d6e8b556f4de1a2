using Refettle.Sheets.Tree;

namespace Refettle.Sheets.Reading;

/// <summary>Where each thing stands in the file, to give the faults of the structure a line and column.</summary>
internal sealed class Places
{
    private readonly Dictionary<string, Pair> _things = [];

    public void Add(string place, Pair pair) => _things.TryAdd(place, pair);

    public bool Has(string place) => _things.ContainsKey(place);

    /// <summary>The fault with the line and column of its path, or of as much of the path as is written out.</summary>
    public Fault Locate(Fault fault)
    {
        if (!_things.TryGetValue(fault.Place, out var pair))
            return fault with { Line = 1, Column = 1 };
        Node at = pair.Key, inside = pair.Value;
        foreach (var step in Steps(fault.Path))
        {
            if (Go(inside, step) is { } next)
                at = inside = next;
            else if (step is not "ways" and not "[0]")
                break;
        }

        return fault with { Line = at.Line, Column = at.Column };
    }

    /// <summary><c>ways[0].clear[2]</c> gives <c>ways</c>, <c>[0]</c>, <c>clear</c>, <c>[2]</c>.</summary>
    private static string[] Steps(string path) =>
        path.Replace("[", ".[", StringComparison.Ordinal).Split('.', StringSplitOptions.RemoveEmptyEntries);

    private static Node? Go(Node from, string step) => from switch
    {
        Mapping map => map.Find(step)?.Value,
        Sequence list when step[0] == '[' && int.TryParse(step[1..^1], out var i) && i < list.Items.Count => list.Items[i],
        Scalar or Sequence when step == "[0]" => from,
        _ => null,
    };
}
