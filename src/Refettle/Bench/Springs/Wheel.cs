namespace Refettle.Bench.Springs;

/// <summary>What the wheel feels of a spring, and how fast the body bobs on it.</summary>
public static class Wheel
{
    /// <summary>Standard gravity in m/s².</summary>
    public const double Gravity = 9.80665;

    private static readonly Input<double> Spring = Inputs.Quantity("rate", "spring rate", Units.NewtonPerMillimetre, 0.1, 1000);
    private static readonly Input<double> MotionRatio =
        Inputs.Quantity("motion-ratio", "spring travel over wheel travel (not the other way round)", Units.One, 0.1, 1.5);
    private static readonly Input<double> Tyre =
        Inputs.Quantity("tyre-rate", "rate of the tyre, in series", Units.NewtonPerMillimetre, 20, 2000).Optional();
    private static readonly Input<double> WheelRate =
        Inputs.Quantity("wheel-rate", "rate at the wheel", Units.NewtonPerMillimetre, 0.1, 1000);
    private static readonly Input<double> Mass = Inputs.Quantity("mass", "sprung mass on that wheel", Units.Kilogram, 10, 5000);

    public static BenchNumber RateNumber { get; } = new()
    {
        Name = "wheel-rate",
        Says = "Rate at the wheel from spring rate and motion ratio",
        Room = "Springs",
        Formula = "kw = k MR², MR = spring travel / wheel travel; with tyre kw kt / (kw + kt)",
        Source = "Work of the linkage; some pages define MR upside down and divide",
        Uncertainty = "Twice the relative error of the motion ratio. Rubber bushes add their own rate.",
        Inputs = [Spring, MotionRatio, Tyre],
        Example = "rate=50N/mm motion-ratio=0.75",
        Work = WorkRate,
    };

    public static BenchNumber FrequencyNumber { get; } = new()
    {
        Name = "ride-frequency",
        Says = "Ride frequency and static deflection",
        Room = "Springs",
        Formula = "f = √(k/m) / 2π; deflection = m g / k",
        Source = "One mass on one spring; comfortable cars 1.0 to 1.5 Hz (published rule of thumb)",
        Uncertainty = "Half the relative error of rate and mass. Leaf springs are stiffer for small bumps.",
        Inputs = [WheelRate, Mass],
        Example = "wheel-rate=28.125N/mm mass=350kg",
        Work = WorkFrequency,
    };

    /// <summary>Rate at the wheel in the unit of the spring rate.</summary>
    public static double AtWheel(double springRate, double motionRatio) => springRate * motionRatio * motionRatio;

    /// <summary>Two rates in series.</summary>
    public static double InSeries(double one, double other) => one * other / (one + other);

    /// <summary>Frequency in Hz of a mass in kg on a rate in N/mm.</summary>
    public static double FrequencyHertz(double rateNewtonsPerMillimetre, double massKilograms) =>
        Math.Sqrt(rateNewtonsPerMillimetre * 1000 / massKilograms) / (2 * Math.PI);

    /// <summary>Deflection in mm under gravity that belongs to a frequency in Hz.</summary>
    public static double DeflectionMillimetres(double frequencyHertz) => Gravity * 1000 / Math.Pow(2 * Math.PI * frequencyHertz, 2);

    private static Result<Outcome> WorkRate(Given given)
    {
        var rate = AtWheel(given.Of(Spring), given.Of(MotionRatio));
        ValueList<BenchValue> values = [new("wheel rate", rate, Units.NewtonPerMillimetre)];
        return given.Maybe(Tyre) is { } tyre
            ? Outcome.Of([.. values, new("with tyre", InSeries(rate, tyre), Units.NewtonPerMillimetre)])
            : Outcome.Of(values);
    }

    private static Result<Outcome> WorkFrequency(Given given)
    {
        var frequency = FrequencyHertz(given.Of(WheelRate), given.Of(Mass));
        return Outcome.Of(new("frequency", frequency, Units.Hertz),
            new("static deflection", DeflectionMillimetres(frequency), Units.Millimetre));
    }
}
