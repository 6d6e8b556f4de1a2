namespace Refettle.Bench.Coating;

/// <summary>How drying and curing times change with temperature.</summary>
public static class Cure
{
    public static Input<double> Stated { get; } =
        Inputs.Quantity("stated-at", "temperature that the data sheet's time is for", Units.Celsius, -10, 80);

    public static Input<double> Actual { get; } = Inputs.Quantity("at", "temperature of the part while it cures", Units.Celsius, -10, 80);

    private static readonly Input<double> Time = Inputs.Quantity("time", "time that the data sheet states", Units.Hour, 0.01, 10_000);

    public static BenchNumber Number { get; } = new()
    {
        Name = "cure",
        Says = "Cure time at another temperature",
        Room = "Coating",
        Formula = "t₂ = t₁ · 2^((T₁ − T₂) / 10 K)",
        Source = "Rule of thumb of the trade, no standard: doubles for each 10 K colder. The data sheet's own table comes first",
        Uncertainty = "The range is a factor between 1.5 and 3 for each 10 K (assumed). Some epoxies stop below 10 to 13 °C and do not start again as they were.",
        Inputs = [Time, Stated, Actual],
        Example = "time=16h stated-at=20C at=12C",
        Work = Work,
    };

    /// <summary>The time's factor for going from one temperature to another.</summary>
    /// <param name="perTenKelvin">Factor for each 10 K colder, more than 1.</param>
    public static double Factor(double statedCelsius, double actualCelsius, double perTenKelvin = 2) =>
        Math.Pow(perTenKelvin, (statedCelsius - actualCelsius) / 10);

    /// <summary>Ea in kJ/mol that makes a reaction twice as fast at the warmer of two temperatures (Arrhenius).</summary>
    public static double DoublingEnergyKilojoulesPerMole(double coldCelsius, double warmCelsius) =>
        8.314462618 * Math.Log(2) / (1 / (coldCelsius + 273.15) - 1 / (warmCelsius + 273.15)) / 1000;

    private static Result<Outcome> Work(Given given)
    {
        var (time, stated, actual) = (given.Of(Time), given.Of(Stated), given.Of(Actual));
        var (one, other) = (time * Factor(stated, actual, 1.5), time * Factor(stated, actual, 3));
        return Outcome.Judged(
            [new("time", time * Factor(stated, actual), Units.Hour, Math.Min(one, other), Math.Max(one, other))],
            verdict: null,
            actual < 13 ? "Some epoxies stop curing below 10 to 13 °C: look for the least temperature on the data sheet." : null);
    }
}
