namespace Refettle.Web.Drawing;

/// <summary>Heights for the slots of all layers: near the mean of their neighbours, never closer than they are high.</summary>
public static class Placement
{
    private const int Passes = 6;

    /// <summary>The middle of each slot in pixels, the smallest half a slot from 0.</summary>
    public static double[] Heights(Layering layering, int[][] order, double boxPitch, double bendPitch)
    {
        var pitch = layering.Slots.Select(slot => slot.IsBend ? bendPitch : boxPitch).ToArray();
        var height = new double[layering.Slots.Count];
        foreach (var layer in order)
            Settle(layer, pitch, height, slot => 0);
        var around = layering.Spans.Concat(layering.Spans.Select(span => (From: span.To, To: span.From)))
            .ToLookup(span => span.From, span => span.To);
        for (var pass = 0; pass < Passes; pass++)
            foreach (var layer in pass % 2 == 0 ? order : order.Reverse())
                Settle(layer, pitch, height, slot => around[slot].Select(other => height[other]).DefaultIfEmpty(height[slot]).Average());
        var top = height.Select((middle, slot) => middle - pitch[slot] / 2).DefaultIfEmpty(0).Min();
        return [.. height.Select(middle => middle - top)];
    }

    /// <summary>Moves a layer's slots as near to where they want to be as their distances allow. In the coordinates from which the
    /// distances are taken off this is least squares under order: neighbours out of order are pooled at their mean.</summary>
    private static void Settle(int[] layer, double[] pitch, double[] height, Func<int, double> wanted)
    {
        var offset = Offsets(layer, pitch);
        var pools = new Stack<(double Sum, int Count)>();
        for (var i = 0; i < layer.Length; i++)
        {
            var pool = (Sum: wanted(layer[i]) - offset[i], Count: 1);
            while (pools.TryPeek(out var above) && above.Sum / above.Count > pool.Sum / pool.Count)
            {
                pools.Pop();
                pool = (above.Sum + pool.Sum, above.Count + pool.Count);
            }

            pools.Push(pool);
        }

        var place = 0;
        foreach (var (sum, count) in pools.Reverse())
            for (var end = place + count; place < end; place++)
                height[layer[place]] = sum / count + offset[place];
    }

    private static double[] Offsets(int[] layer, double[] pitch)
    {
        var offset = new double[layer.Length];
        for (var i = 1; i < layer.Length; i++)
            offset[i] = offset[i - 1] + (pitch[layer[i - 1]] + pitch[layer[i]]) / 2;
        return offset;
    }
}
