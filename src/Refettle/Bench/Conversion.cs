namespace Refettle.Bench;

/// <summary>One quantity in another unit.</summary>
public static class Conversion
{
    private static readonly Input<Measure> Value = Inputs.Any("value", "quantity with its unit");

    private static readonly Input<Unit> Target = new()
    {
        Name = "to",
        Says = "unit wanted",
        Accepts = "a unit that measures the same",
        Reader = text => Units.Find(text) is { } unit
            ? Result<Unit>.Good(unit)
            : Result<Unit>.Bad(new Fault("to", $"the unit '{text}' is not known",
                "Known: " + string.Join(", ", Units.All.Skip(1).Select(known => known.Symbol)))),
    };

    public static BenchNumber Number { get; } = new()
    {
        Name = "convert",
        Says = "A quantity in another unit",
        Room = "Units",
        Formula = "value · factor",
        Source = "Definitions of the units (NIST SP 811)",
        Uncertainty = "None; shown to four digits.",
        Inputs = [Value, Target],
        Example = "value=35lbf·ft to=N·m",
        Work = Work,
    };

    private static Result<Outcome> Work(Given given)
    {
        var (value, word) = (given.Of(Value), given.Of(Target));
        return Units.Find(value.Unit.Dimension, word.Symbol) is { } unit
            ? Outcome.Of(new BenchValue("value", value.In(unit), unit))
            : Outcome.Refuse("to", $"{word} does not measure what {value} does", $"Give one of: {Units.Of(value.Unit.Dimension)}");
    }
}
