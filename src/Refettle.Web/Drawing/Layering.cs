namespace Refettle.Web.Drawing;

/// <summary>A place in a layer: a bundle of steps, or a bend of a link that passes through.</summary>
/// <param name="Bundle">The bundle's number; -1 for a bend.</param>
public sealed record Slot(int Layer, int Bundle)
{
    public bool IsBend => Bundle < 0;
}

/// <summary>Bundles in layers, each as close before what waits for it as it can be; links that cross layers bend in each of them.</summary>
public sealed class Layering
{
    private readonly List<Slot> _slots = [];
    private readonly List<(int From, int To)> _spans = [];
    private readonly List<int[]> _routes = [];

    public Layering(PlanGraph graph)
    {
        var depth = Depths(graph);
        LayerCount = graph.Count == 0 ? 0 : depth.Max() + 1;
        for (var bundle = 0; bundle < graph.Count; bundle++)
            _slots.Add(new(LayerCount - 1 - depth[bundle], bundle));
        foreach (var link in graph.Links)
            _routes.Add(Route(link));
    }

    public int LayerCount { get; }

    /// <summary>Bundles first, by number, then bends.</summary>
    public IReadOnlyList<Slot> Slots => _slots;

    /// <summary>Pairs of slots in neighbouring layers.</summary>
    public IReadOnlyList<(int From, int To)> Spans => _spans;

    /// <summary>For each link of the graph, the slots it runs through.</summary>
    public IReadOnlyList<int[]> Routes => _routes;

    /// <summary>For each bundle, the length of the longest chain that waits for it.</summary>
    private static int[] Depths(PlanGraph graph)
    {
        var depth = new int[graph.Count];
        foreach (var link in graph.Links.OrderByDescending(link => link.From).ThenByDescending(link => link.To))
            depth[link.From] = Math.Max(depth[link.From], depth[link.To] + 1);
        return depth;
    }

    private int[] Route(Link link)
    {
        var route = new List<int> { link.From };
        for (var layer = _slots[link.From].Layer + 1; layer < _slots[link.To].Layer; layer++)
        {
            _slots.Add(new(layer, -1));
            route.Add(_slots.Count - 1);
        }

        route.Add(link.To);
        _spans.AddRange(route.Zip(route.Skip(1)));
        return [.. route];
    }
}
