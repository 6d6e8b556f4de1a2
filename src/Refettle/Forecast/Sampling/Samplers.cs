using System.Numerics;

namespace Refettle.Forecast.Sampling;

/// <summary>Draws the durations of one activity in a block of futures.</summary>
internal interface ISampler
{
    /// <param name="durations">As many as bits.</param>
    /// <param name="bits">64 even bits for each future; more bits never draw a shorter duration, but inside a cell of a table.</param>
    void Fill(Span<float> durations, ReadOnlySpan<ulong> bits, SharedDraws shared);
}

internal sealed class FixedSampler(float duration) : ISampler
{
    public void Fill(Span<float> durations, ReadOnlySpan<ulong> bits, SharedDraws shared) => durations.Fill(duration);
}

/// <summary>A table, scaled and shifted.</summary>
internal sealed class TableSampler(QuantileTable table, float shift, float scale) : ISampler
{
    public void Fill(Span<float> durations, ReadOnlySpan<ulong> bits, SharedDraws shared)
    {
        for (var i = 0; i < bits.Length; i++)
            durations[i] = shift + scale * table.At(bits[i]);
    }
}

/// <summary>Planned time × the user's overrun: his middle and his spread are one draw for the whole
/// future, the task's own stray another.</summary>
internal sealed class OwnPaceSampler(QuantileTable normal, float planned) : ISampler
{
    private static readonly Vector<float> MostLog = new(MathF.Log((float)OverrunBelief.MostFactor));

    public void Fill(Span<float> durations, ReadOnlySpan<ulong> bits, SharedDraws shared)
    {
        for (var i = 0; i < bits.Length; i++)
            durations[i] = normal.At(bits[i]);
        for (var i = 0; i + Vector<float>.Count <= durations.Length; i += Vector<float>.Count)
        {
            var log = new Vector<float>(shared.Middle, i) + new Vector<float>(shared.Spread, i) * new Vector<float>(durations[i..]);
            (Vector.Exp(Vector.Clamp(log, -MostLog, MostLog)) * planned).CopyTo(durations[i..]);
        }
    }
}

/// <summary>A list of outcomes for each level of something shared.</summary>
internal sealed class LevelSampler(int level, Steps[] byLevel) : ISampler
{
    public void Fill(Span<float> durations, ReadOnlySpan<ulong> bits, SharedDraws shared)
    {
        var levels = shared.Levels[level];
        for (var i = 0; i < bits.Length; i++)
            durations[i] = byLevel[levels[i]].At(bits[i]);
    }
}

/// <summary>Nothing with one chance, else what another sampler draws from the bits that are left.</summary>
internal sealed class PerhapsSampler(double chance, ISampler when) : ISampler
{
    private readonly double _spared = (1 - chance) * Math.Pow(2, 64);

    public void Fill(Span<float> durations, ReadOnlySpan<ulong> bits, SharedDraws shared)
    {
        Span<ulong> rest = stackalloc ulong[bits.Length];
        for (var i = 0; i < bits.Length; i++)
            rest[i] = (ulong)Math.Clamp((bits[i] - _spared) / chance, 0, Math.Pow(2, 64) - 4096);
        when.Fill(durations, rest, shared);
        for (var i = 0; i < bits.Length; i++)
            durations[i] = bits[i] < _spared ? 0 : durations[i];
    }
}

/// <summary>What another sampler draws, times a factor, less an amount.</summary>
internal sealed class EasedSampler(ISampler of, float factor, float less) : ISampler
{
    public void Fill(Span<float> durations, ReadOnlySpan<ulong> bits, SharedDraws shared)
    {
        of.Fill(durations, bits, shared);
        for (var i = 0; i < durations.Length; i++)
            durations[i] = Math.Max(0, durations[i] * factor - less);
    }
}
