using Refettle.Forecast.Policy;

namespace Refettle.Forecast;

/// <summary>The finishes of all futures, sorted.</summary>
internal sealed class Finishes
{
    private const int CurvePoints = 60;

    private readonly int[] _sorted;

    public Finishes(int[] finishes)
    {
        _sorted = [.. finishes];
        Array.Sort(_sorted);
    }

    /// <summary>How many are finished by a time.</summary>
    public int By(int time)
    {
        var (from, to) = (0, _sorted.Length);
        while (from < to)
        {
            var middle = (from + to) / 2;
            (from, to) = _sorted[middle] <= time ? (middle + 1, to) : (from, middle);
        }

        return from;
    }

    public Estimate Chance(int time) => Estimate.OfChance(By(time), _sorted.Length);

    public Estimate Unfinished => Estimate.OfChance(_sorted.Length - By(OpenTimes.Never - 1), _sorted.Length);

    /// <summary>The time that so many do not exceed. Its standard error is half the distance between the quantiles one standard error of
    /// the share below and above.</summary>
    public Moment Quantile(double share)
    {
        var error = Math.Sqrt(share * (1 - share) / _sorted.Length);
        var (low, high) = (At(share - error), At(share + error));
        return At(share) is var time && time >= OpenTimes.Never
            ? new(null, 0)
            : new(time, high >= OpenTimes.Never ? time - low : (high - low) / 2.0);
    }

    /// <summary>Points at even times over all but the outermost in a hundred.</summary>
    public ValueList<FinishChance> Curve()
    {
        var (first, last) = (At(0.005), At(0.995));
        if (last >= OpenTimes.Never)
            last = _sorted[Math.Max(0, By(OpenTimes.Never - 1) - 1)];
        if (last <= first || last >= OpenTimes.Never)
            return last >= OpenTimes.Never ? [] : [new(last, Chance(last).Value)];
        return Enumerable.Range(0, CurvePoints + 1).Select(i => first + (int)((long)(last - first) * i / CurvePoints)).Distinct()
            .Select(time => new FinishChance(time, Chance(time).Value)).ToValueList();
    }

    private int At(double share) => _sorted[Math.Clamp((int)Math.Ceiling(share * _sorted.Length) - 1, 0, _sorted.Length - 1)];
}
