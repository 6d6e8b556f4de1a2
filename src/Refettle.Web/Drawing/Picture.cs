using System.Text;
using Refettle.Access;

namespace Refettle.Web.Drawing;

/// <summary>Where a bundle of steps is drawn: its box's upper left corner, in pixels.</summary>
/// <param name="Steps">The steps in it; the last is the one it is named after.</param>
public sealed record Box(ValueList<int> Steps, double Left, double Top)
{
    public int Main => Steps[^1];
}

/// <summary>A link as it is drawn.</summary>
/// <param name="Path">An SVG path.</param>
public readonly record struct Thread(Link Link, string Path);

/// <summary>The drawing of a plan: time runs from left to right, each box stands just before what waits for it.</summary>
public sealed record Picture(double Width, double Height, ValueList<Box> Boxes, ValueList<Thread> Threads)
{
    public const double BoxWidth = 200;
    public const double BoxHeight = 72;
    private const double ColumnGap = 44;
    private const double RowGap = 14;
    private const double BendPitch = 18;
    private const double Margin = 8;

    public static Picture Of(Plan plan)
    {
        var steps = PlanGraph.Of(plan);
        var bundles = new Bundles(plan, steps);
        var graph = PlanGraph.Of(steps, bundles);
        var layering = new Layering(graph);
        var height = Placement.Heights(layering, Ordering.Of(layering), BoxHeight + RowGap, BendPitch);
        var boxes = Enumerable.Range(0, graph.Count)
            .Select(bundle => new Box(bundles.Steps[bundle], Left(layering.Slots[bundle].Layer), height[bundle] - BoxHeight / 2 + Margin));
        var threads = graph.Links.Zip(layering.Routes, (link, route) => new Thread(link, Path(layering, route, height)));
        var tall = height.DefaultIfEmpty(0).Max() + BoxHeight / 2 + 2 * Margin;
        return new(Left(layering.LayerCount) - ColumnGap + Margin, tall, boxes.ToValueList(), threads.ToValueList());
    }

    private static double Left(int layer) => Margin + layer * (BoxWidth + ColumnGap);

    private static string Path(Layering layering, int[] route, double[] height)
    {
        var path = new StringBuilder();
        var (x, y) = (Left(layering.Slots[route[0]].Layer) + BoxWidth, height[route[0]] + Margin);
        path.Append($"M{x:0.#} {y:0.#}");
        foreach (var slot in route.Skip(1))
        {
            var (left, middle) = (Left(layering.Slots[slot].Layer), height[slot] + Margin);
            var half = (left - x) / 2;
            path.Append($"C{x + half:0.#} {y:0.#} {left - half:0.#} {middle:0.#} {left:0.#} {middle:0.#}");
            (x, y) = (left, middle);
            if (!layering.Slots[slot].IsBend)
                continue;
            x += BoxWidth;
            path.Append($"H{x:0.#}");
        }

        return path.ToString();
    }
}
