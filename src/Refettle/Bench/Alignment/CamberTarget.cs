namespace Refettle.Bench.Alignment;

/// <summary>What can be adjusted.</summary>
public enum Adjuster
{
    UpperArm,
    LowerArm,

    /// <summary>Shims that move the upper inner pivot outward.</summary>
    UpperShim,

    /// <summary>Shims that move the lower inner pivot outward.</summary>
    LowerShim,
}

/// <summary>Finds the change that brings a double wishbone to a camber.</summary>
public static class CamberTarget
{
    /// <summary>The greatest change looked for, in mm to either side.</summary>
    public const double MostMillimetres = 40;

    public static LinkageChange Change(Adjuster adjuster, double millimetres) => adjuster switch
    {
        Adjuster.UpperArm => new(UpperArm: millimetres),
        Adjuster.LowerArm => new(LowerArm: millimetres),
        Adjuster.UpperShim => new(UpperPivot: millimetres),
        _ => new(LowerPivot: millimetres),
    };

    /// <summary>Change in mm; null when no change of up to <see cref="MostMillimetres"/> reaches the target.</summary>
    public static double? Solve(DoubleWishbone linkage, Adjuster adjuster, Held held, double targetDegrees)
    {
        double Miss(double millimetres) =>
            (linkage.After(Change(adjuster, millimetres), held)?.CamberDegrees ?? double.NaN) - targetDegrees;
        if (Miss(0) == 0)
            return 0;
        for (var reach = 1.0; reach <= MostMillimetres; reach += 1)
        {
            foreach (var side in (double[])[-1, 1])
            {
                if (Halve(Miss, side * (reach - 1), side * reach) is { } root)
                    return root;
            }
        }

        return null;
    }

    /// <summary>The zero between two ends by halving; null when there is no change of sign, or the
    /// linkage does not close on the way.</summary>
    private static double? Halve(Func<double, double> miss, double near, double far)
    {
        var nearMiss = miss(near);
        if (!(nearMiss * miss(far) <= 0))
            return null;
        for (var round = 0; round < 45; round++)
        {
            var middle = (near + far) / 2;
            var value = miss(middle);
            if (double.IsNaN(value))
                return null;
            if (nearMiss * value <= 0)
                far = middle;
            else
                (near, nearMiss) = (middle, value);
        }

        return (near + far) / 2;
    }
}
