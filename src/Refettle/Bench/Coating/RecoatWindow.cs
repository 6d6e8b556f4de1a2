namespace Refettle.Bench.Coating;

/// <summary>Whether the next coat may go on, counted from the last.</summary>
public static class RecoatWindow
{
    private static readonly Input<double> Opens =
        Inputs.Quantity("opens", "least time to the next coat, from the data sheet", Units.Hour, 0, 10_000);
    private static readonly Input<double> Closes =
        Inputs.Quantity("closes", "most time to the next coat without abrading", Units.Hour, 0.01, 100_000);
    private static readonly Input<double> Elapsed = Inputs.Quantity("elapsed", "time since the last coat", Units.Hour, 0, 100_000);

    public static BenchNumber Number { get; } = new()
    {
        Name = "recoat-window",
        Says = "Whether the next coat may go on now",
        Room = "Coating",
        Formula = "colder: opens · 2^(ΔT/10 K), closes as stated; warmer: opens as stated, closes / 2^(ΔT/10 K)",
        Source = "Window from the product's data sheet; scaling after the trade's rule of thumb, always to the safe side. The data sheet's own row for this temperature comes first",
        Uncertainty = "Only the data sheet is sure. The scaling narrows the window, it never widens it.",
        Inputs = [Opens, Closes, Elapsed, Cure.Stated, Cure.Actual],
        Example = "opens=16h closes=5d elapsed=30h stated-at=20C at=15C",
        Work = Work,
    };

    /// <summary>The window in hours, narrowed to the safe side for the actual temperature.</summary>
    public static (double Opens, double Closes) Hours(double opensHours, double closesHours, double statedCelsius, double actualCelsius)
    {
        var factor = Cure.Factor(statedCelsius, actualCelsius);
        return (opensHours * Math.Max(1, factor), closesHours * Math.Min(1, factor));
    }

    private static Result<Outcome> Work(Given given)
    {
        if (given.Of(Opens) >= given.Of(Closes))
            return Outcome.Refuse("opens", "the window closes before it opens", "Exchange opens and closes");
        var (opens, closes) = Hours(given.Of(Opens), given.Of(Closes), given.Of(Cure.Stated), given.Of(Cure.Actual));
        var elapsed = given.Of(Elapsed);
        ValueList<BenchValue> values = [new("opens after", opens, Units.Hour), new("closes after", closes, Units.Hour)];
        if (opens >= closes)
            return Outcome.Judged(values, "abrade first",
                "At this temperature the narrowed window is empty: ask the data sheet, or abrade before the next coat.");
        return elapsed < opens ? Outcome.Judged([.. values, new("wait", opens - elapsed, Units.Hour)], "wait")
            : elapsed <= closes ? Outcome.Judged([.. values, new("left", closes - elapsed, Units.Hour)], "coat")
            : Outcome.Judged(values, "abrade first",
                "The window has passed: abrade to a dull surface and clean, or the next coat may peel.");
    }
}
