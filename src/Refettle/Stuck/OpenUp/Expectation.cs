namespace Refettle.Stuck.OpenUp;

/// <summary>A mean that is gathered outcome by outcome, apart for outcomes after which something is opened.</summary>
internal sealed class Expectation
{
    private double _squares;
    private double _openingMinutes;
    private int _outcomes;

    public double Minutes { get; private set; }

    /// <summary>The chance that something is opened later.</summary>
    public double Opens { get; private set; }

    /// <summary>Mean minutes of the outcomes after which something is opened, and of the others; null where there are none.</summary>
    public (double? Opening, double? NotOpening) Apart => (
        Opens > 1e-9 ? _openingMinutes / Opens : null,
        Opens < 1 - 1e-9 ? (Minutes - _openingMinutes) / (1 - Opens) : null);

    /// <summary>Half of a 95 % confidence interval, if the outcomes were drawn by chance.</summary>
    public double HalfWidth => _outcomes < 2 ? 0 : 1.96 * Math.Sqrt(Math.Max(0, _squares - (Minutes * Minutes)) / (_outcomes - 1));

    public void Add(double chance, double minutes, bool opens)
    {
        _outcomes++;
        Minutes += chance * minutes;
        _squares += chance * minutes * minutes;
        if (!opens)
            return;
        Opens += chance;
        _openingMinutes += chance * minutes;
    }
}
