namespace Refettle.Forecast.Sampling;

/// <summary>Random bits by place: those of one thing in one future depend on the seed, the thing's name and the future's number alone, so
/// adding a thing reshuffles nothing and futures can be worked in any order.</summary>
/// <remarks>SplitMix64 (Steele, Lea, Flood, Fast splittable pseudorandom number generators, OOPSLA 2014): the n-th number of a stream is a
/// mix of start + n × γ.</remarks>
internal static class Streams
{
    private const ulong Gamma = 0x9E3779B97F4A7C15;

    /// <summary>The start of the stream of a thing.</summary>
    public static ulong Of(ulong seed, string name)
    {
        var hash = 0xCBF29CE484222325;
        foreach (var letter in name)
            hash = (hash ^ letter) * 0x100000001B3;
        return Mix(Mix(seed + Gamma) ^ hash);
    }

    /// <summary>The bits of consecutive futures.</summary>
    public static void Fill(Span<ulong> bits, ulong stream, long first)
    {
        var state = stream + (ulong)first * Gamma;
        for (var i = 0; i < bits.Length; i++)
            bits[i] = Mix(state += Gamma);
    }

    private static ulong Mix(ulong state)
    {
        state = (state ^ (state >> 30)) * 0xBF58476D1CE4E5B9;
        state = (state ^ (state >> 27)) * 0x94D049BB133111EB;
        return state ^ (state >> 31);
    }
}
