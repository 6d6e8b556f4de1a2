namespace Refettle.CloseUp;

/// <summary>One pass over the fasteners of a joint.</summary>
/// <param name="Torque">What the wrench is set to; null for a turn by angle or by hand.</param>
/// <param name="AngleDegrees">A further turn; null for a pass by torque.</param>
/// <param name="Order">The places in their order, from 1.</param>
public sealed record TorqueStage(string Says, NewtonMetres? Torque, decimal? AngleDegrees, ValueList<int> Order);

/// <summary>Tightening in stages, so that the joint closes evenly.</summary>
/// <remarks>Shares of 30, 60 and 100 % and a pass around are common practice for four fasteners and more (ASME PCC-1 from memory has
/// 20–30, 50–70 and 100 %). The maker's stages come first.</remarks>
public static class TorqueStages
{
    private static readonly decimal[] Shares = [0.3m, 0.6m];

    /// <summary>The passes to a final torque.</summary>
    /// <param name="final">More than 0.</param>
    /// <param name="order">The places in their order; it says how many there are.</param>
    /// <param name="angles">Turns after the torque, in degrees, each more than 0; empty for none.</param>
    public static ValueList<TorqueStage> To(NewtonMetres final, ValueList<int> order, params ValueList<decimal> angles)
    {
        var turns = angles.Select(angle => new TorqueStage($"turn {angle:0.#}° further, in order", null, angle, order));
        var full = new TorqueStage($"{final}, in order", final, null, order);
        if (order.Count < 4)
            return [.. ByHand(order), full, .. turns];
        var before = Shares.Select(share => Rounded(final, share))
            .Select(torque => new TorqueStage($"{torque}, in order", torque, null, order));
        var around = angles.Count > 0
            ? Enumerable.Empty<TorqueStage>()
            : [new($"{final} once around, until none turns", final, null, TighteningSequence.Around(order.Count))];
        return [.. ByHand(order), .. before, full, .. around, .. turns];
    }

    private static IEnumerable<TorqueStage> ByHand(ValueList<int> order) =>
        [new("all by hand until they seat", null, null, order)];

    /// <summary>A share of the torque that can be set: whole newton metres, halves below 10.</summary>
    private static NewtonMetres Rounded(NewtonMetres final, decimal share)
    {
        var torque = final.Value * share;
        var step = torque >= 10 ? 1m : 0.5m;
        return new(Math.Max(step, Math.Round(torque / step, MidpointRounding.AwayFromZero) * step));
    }
}
