namespace Refettle.Stuck.OpenUp;

/// <summary>A mean that is gathered outcome by outcome, apart for outcomes after which something is opened.</summary>
internal sealed class Expectation
{
    private double _chance;
    private double _minutes;
    private double _squares;
    private double _opens;
    private double _openingMinutes;
    private int _outcomes;

    public double Minutes => _chance > 0 ? _minutes / _chance : 0;

    /// <summary>The chance that something is opened later.</summary>
    public double Opens => _chance > 0 ? _opens / _chance : 0;

    /// <summary>Mean minutes of the outcomes after which something is opened, and of the others; null where there are none.</summary>
    public (double? Opening, double? NotOpening) Apart => (
        Opens > 1e-9 ? _openingMinutes / _opens : null,
        Opens < 1 - 1e-9 ? (_minutes - _openingMinutes) / (_chance - _opens) : null);

    /// <summary>Half of a 95 % confidence interval, if the outcomes were drawn by chance.</summary>
    public double HalfWidth =>
        _outcomes < 2 ? 0 : 1.96 * Math.Sqrt(Math.Max(0, (_squares / _chance) - (Minutes * Minutes)) / (_outcomes - 1));

    /// <param name="chance">The outcome's chance, or 1 for each of those that were drawn.</param>
    /// <param name="minutes">What it costs.</param>
    /// <param name="opens">Whether something is opened after it.</param>
    public void Add(double chance, double minutes, bool opens)
    {
        _outcomes++;
        _chance += chance;
        _minutes += chance * minutes;
        _squares += chance * minutes * minutes;
        if (!opens)
            return;
        _opens += chance;
        _openingMinutes += chance * minutes;
    }
}
