namespace Refettle.Stuck;

/// <summary>How rust is taken to spread over a car: the car has a hidden grade, each zone a hidden level that follows grade and exposure,
/// each joint a hidden level near its zone's. All five-step scales, 0 comes by hand, 4 is rusted solid.</summary>
/// <remarks>Exposure follows the steps of ISO 9223 (0 dry cabin … 4 sea salt). No published table of seizure by zone is known: the shapes
/// and widths here are common practice, no source, and are meant to be overruled by the car's own tries.</remarks>
public sealed record SeizureModel
{
    public const int Levels = 5;

    public static SeizureModel CommonPractice { get; } = new();

    /// <summary>The chance of each grade of a car before anything is known.</summary>
    public ValueList<double> CarGrades { get; init; } = [0.10, 0.25, 0.30, 0.25, 0.10];

    /// <summary>How far a zone strays from what grade and exposure suggest, in levels.</summary>
    public double ZoneSpread { get; init; } = 0.8;

    /// <summary>How far a joint strays from its zone, in levels.</summary>
    public double JointSpread { get; init; } = 0.9;

    /// <summary>The chances of a zone's levels.</summary>
    /// <param name="grade">The car's grade, 0 to 4.</param>
    /// <param name="exposure">The exposure of the zone or joint, 0 to 4.</param>
    public double[] ZoneLevels(int grade, int exposure) => Around(grade * (1 + exposure) / 5.0, ZoneSpread);

    /// <summary>The chances of a joint's levels in a zone of a level.</summary>
    public double[] JointLevels(int zoneLevel) => Around(zoneLevel, JointSpread);

    /// <summary>A normal curve cut to the scale.</summary>
    private static double[] Around(double middle, double spread)
    {
        var weights = Enumerable.Range(0, Levels).Select(level => Math.Exp(-0.5 * Math.Pow((level - middle) / spread, 2))).ToArray();
        var sum = weights.Sum();
        return Array.ConvertAll(weights, weight => weight / sum);
    }
}
