namespace Refettle.Forecast.Sampling;

/// <summary>The tables of one forecast, made once for each form: simulating again with one thing changed makes few new ones.</summary>
internal sealed class TableShelf
{
    private readonly Dictionary<(string Form, double Shape), QuantileTable> _tables = [];

    public QuantileTable Normal => Get("normal", 0, _ => Quantiles.Normal);

    public QuantileTable LogNormal(double sigma) => Get("log-normal", sigma, Quantiles.LogNormal);

    public QuantileTable Deviation(double shape) => Get("deviation", shape, Quantiles.Deviation);

    public QuantileTable ThreePoint(ThreePointForm form, double likely) => form == ThreePointForm.Triangle
        ? Get("triangle", likely, Quantiles.Triangle)
        : Get("pert", likely, Quantiles.Pert);

    private QuantileTable Get(string form, double shape, Func<double, Func<double, double>> quantile)
    {
        if (!_tables.TryGetValue((form, shape), out var table))
            _tables.Add((form, shape), table = new(quantile(shape)));
        return table;
    }
}
