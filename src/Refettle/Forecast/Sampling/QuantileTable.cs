namespace Refettle.Forecast.Sampling;

/// <summary>A distribution as a table over its quantiles: 128 cells of equal chance, of which the first and the last are split into 64
/// again. Inside a cell values are uniform with the cell's own mean and variance, so both are kept for the whole.</summary>
internal sealed class QuantileTable
{
    private const int Cells = 128;
    private const int Parts = 64;
    private const float ToUnit = 1f / (1UL << 32);

    private readonly float[] _low = new float[Cells + 2 * Parts];
    private readonly float[] _width = new float[Cells + 2 * Parts];

    /// <param name="quantile">Non-decreasing on the open interval 0 to 1.</param>
    public QuantileTable(Func<double, double> quantile)
    {
        for (var cell = 1; cell < Cells - 1; cell++)
            Set(cell, quantile, (double)cell / Cells, 1.0 / Cells);
        for (var part = 0; part < Parts; part++)
        {
            Set(Cells + part, quantile, (double)part / Cells / Parts, 1.0 / Cells / Parts);
            Set(Cells + Parts + part, quantile, (Cells - 1 + (double)part / Parts) / Cells, 1.0 / Cells / Parts);
        }
    }

    /// <summary>The value at the quantile that the bits spell.</summary>
    public float At(ulong bits)
    {
        var cell = (int)(bits >> 57);
        if (cell is > 0 and < Cells - 1)
            return _low[cell] + _width[cell] * ((uint)(bits >> 25) * ToUnit);
        cell = (cell == 0 ? Cells : Cells + Parts) + (int)((bits >> 51) & (Parts - 1));
        return _low[cell] + _width[cell] * ((uint)(bits >> 19) * ToUnit);
    }

    private void Set(int place, Func<double, double> quantile, double from, double share)
    {
        var (mean, square) = (0.0, 0.0);
        foreach (var (node, weight) in Cell.Nodes)
        {
            var value = quantile(from + share * node);
            mean += weight * value;
            square += weight * value * value;
        }

        var half = Math.Sqrt(3 * Math.Max(0, square - mean * mean));
        (_low[place], _width[place]) = ((float)(mean - half), (float)(2 * half));
    }

    /// <summary>Where a cell is looked at, and how much each look counts: Gauss–Legendre with four nodes on 0 to 1.</summary>
    private static class Cell
    {
        private const double Near = 0.3399810435848563;
        private const double Far = 0.8611363115940526;
        private const double NearWeight = 0.6521451548625461;
        private const double FarWeight = 0.3478548451374538;

        public static readonly (double Node, double Weight)[] Nodes =
        [
            ((1 - Far) / 2, FarWeight / 2), ((1 - Near) / 2, NearWeight / 2), ((1 + Near) / 2, NearWeight / 2),
            ((1 + Far) / 2, FarWeight / 2),
        ];
    }
}
