using Refettle.Bench.Threads;

namespace Refettle.Bench.Heat;

/// <summary>Whether acid derusting or plating may make a bolt brittle.</summary>
public static class HydrogenRisk
{
    private static readonly Input<double> Hardness =
        Inputs.Quantity("hardness", "Vickers hardness; the class's greatest is taken when not given", Units.One, 100, 900).Optional();
    private static readonly Input<string> Class = ThreadInputs.Class.Optional();

    public static BenchNumber Number { get; } = new()
    {
        Name = "hydrogen",
        Says = "Risk of hydrogen embrittlement when a bolt is derusted in acid or plated",
        Room = "Heat",
        Formula = "up to 335 HV low; up to 380 HV concern; above do not",
        Source = "ISO 4042:1999 (320 and 365 HV) with ISO 898-1 hardness ranges; baking 190 to 230 °C (ISO 9587 family). The mapping to classes is an inference",
        Uncertainty = "A rule of caution, not a test. ISO 4042:2018 uses 390 HV (from memory). A brittle bolt breaks hours later, without warning.",
        Inputs = [Class, Hardness],
        Example = "class=10.9",
        Work = Work,
    };

    private static Result<Outcome> Work(Given given)
    {
        if (given.Maybe(Hardness) is { } measured)
            return Judge(measured);
        return !given.Has(Class)
            ? Outcome.Refuse("class", "neither class nor hardness is given", "Give one of them")
            : MostVickers(given.Of(Class)) is { } most ? Judge(most) : Caution([], "concern");
    }

    private static Result<Outcome> Judge(double vickers) => vickers <= 335
        ? Outcome.Judged([new("hardness judged", vickers, Units.One)], "low")
        : Caution([new("hardness judged", vickers, Units.One)], vickers > 380 ? "do not" : "concern");

    private static Result<Outcome> Caution(ValueList<BenchValue> values, string verdict) => Outcome.Judged(values, verdict,
        verdict == "do not"
            ? "No acid and no electroplating in a home shop: clean it mechanically or replace it."
            : "Only with a record of baking at 190 to 230 °C, commonly 4 h or more, right after plating; else clean mechanically.");

    private static double? MostVickers(string grade) =>
        grade switch { "8.8" => 335, "10.9" => 380, "12.9" => 435, "SAE 5" => 335, _ => null };
}
