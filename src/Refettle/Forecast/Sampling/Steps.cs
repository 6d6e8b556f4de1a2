namespace Refettle.Forecast.Sampling;

/// <summary>A list of values with their chances, found by bits; values rise with the bits.</summary>
internal sealed class Steps
{
    private const int Guides = 64;

    private readonly float[] _values;
    private readonly ulong[] _upTo;
    private readonly int[] _guide = new int[Guides];

    public Steps(IEnumerable<DurationChance> outcomes)
    {
        var sorted = outcomes.Where(outcome => outcome.Chance > 0).OrderBy(outcome => outcome.Duration).ToArray();
        var (sum, all) = (0.0, sorted.Sum(outcome => outcome.Chance));
        _values = Array.ConvertAll(sorted, outcome => (float)outcome.Duration);
        _upTo = Array.ConvertAll(sorted, outcome => Bits((sum += outcome.Chance) / all));
        _upTo[^1] = ulong.MaxValue;
        for (var guide = 0; guide < Guides; guide++)
            _guide[guide] = Array.FindIndex(_upTo, end => end >= (ulong)guide << 58);
    }

    public float At(ulong bits) => _values[Index(bits)];

    /// <summary>Place of the value among those with a chance, in rising order.</summary>
    public int Index(ulong bits)
    {
        var place = _guide[(int)(bits >> 58)];
        while (_upTo[place] < bits)
            place++;
        return place;
    }

    private static ulong Bits(double share) => share >= 1 ? ulong.MaxValue : (ulong)(share * Math.Pow(2, 64));
}
