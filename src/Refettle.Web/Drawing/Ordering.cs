namespace Refettle.Web.Drawing;

/// <summary>Orders each layer so that few links cross: sweeps that put every slot at the mean of its neighbours (the barycentre
/// heuristic of Sugiyama, Tagawa and Toda 1981), keeping the best order seen.</summary>
public static class Ordering
{
    private const int Sweeps = 12;

    /// <summary>For each layer its slots from top to bottom.</summary>
    public static int[][] Of(Layering layering)
    {
        var order = Enumerable.Range(0, layering.LayerCount)
            .Select(layer => Enumerable.Range(0, layering.Slots.Count).Where(slot => layering.Slots[slot].Layer == layer).ToArray())
            .ToArray();
        var before = layering.Spans.ToLookup(span => span.To, span => span.From);
        var after = layering.Spans.ToLookup(span => span.From, span => span.To);
        var (best, fewest) = (Copy(order), Crossings(layering, order));
        for (var sweep = 0; sweep < Sweeps && fewest > 0; sweep++)
        {
            Sweep(order, sweep % 2 == 0 ? before : after, forward: sweep % 2 == 0);
            if (Crossings(layering, order) is var count && count < fewest)
                (best, fewest) = (Copy(order), count);
        }

        return best;
    }

    /// <summary>How many pairs of links cross between neighbouring layers.</summary>
    public static int Crossings(Layering layering, int[][] order)
    {
        var row = Rows(order, layering.Slots.Count);
        var crossings = 0;
        foreach (var spans in layering.Spans.GroupBy(span => layering.Slots[span.From].Layer))
        {
            var ends = spans.OrderBy(span => row[span.From]).ThenBy(span => row[span.To]).Select(span => row[span.To]).ToArray();
            for (var i = 0; i < ends.Length; i++)
                for (var j = i + 1; j < ends.Length; j++)
                    crossings += ends[j] < ends[i] ? 1 : 0;
        }

        return crossings;
    }

    private static void Sweep(int[][] order, ILookup<int, int> neighbours, bool forward)
    {
        var row = Rows(order, order.Sum(layer => layer.Length));
        foreach (var layer in forward ? order.Skip(1) : order.Reverse().Skip(1))
        {
            var mean = layer.ToDictionary(slot => slot,
                slot => neighbours[slot].Select(other => (double)row[other]).DefaultIfEmpty(row[slot]).Average());
            var sorted = layer.OrderBy(slot => mean[slot]).ToArray();
            sorted.CopyTo(layer, 0);
            for (var i = 0; i < layer.Length; i++)
                row[layer[i]] = i;
        }
    }

    private static int[] Rows(int[][] order, int count)
    {
        var row = new int[count];
        foreach (var layer in order)
            for (var i = 0; i < layer.Length; i++)
                row[layer[i]] = i;
        return row;
    }

    private static int[][] Copy(int[][] order) => [.. order.Select(layer => layer.ToArray())];
}
