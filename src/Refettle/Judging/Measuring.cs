using Refettle.Bench;
using Refettle.Bench.Limits;

namespace Refettle.Judging;

/// <summary>What a reading says against its limit, given what the measurement is worth.</summary>
/// <param name="StandardUncertainty">One sigma, in the reading's unit; null when neither the
/// instrument's step nor repeats are known.</param>
/// <param name="Limit">Null when none is known: then nothing can be decided.</param>
/// <param name="Decision">Null when it cannot be decided; <see cref="Says"/> tells what is missing.</param>
/// <param name="Within">The chance that the true value is within the limit, 0 to 1.</param>
/// <param name="FalsePass">The greatest chance of a wrong pass at the guarded limit.</param>
/// <param name="Says">How it was decided, or what is missing.</param>
public sealed record MeasuredAnswer(
    Finding Finding, double Mean, double? StandardUncertainty, Limit? Limit, Decision? Decision, double? Within, double? FalsePass,
    string Says)
{
    /// <summary>It reads past its limit: decided as failed, or without a decision, because nobody knows
    /// what the measurement is worth.</summary>
    public bool IsBeyond { get; init; }

    /// <summary>The decision, where there is one, and how it came about.</summary>
    public string Told() =>
        Decision is { } decision && LimitDecision.Word(decision) is var word
            ? $"{char.ToUpperInvariant(word[0])}{word[1..]}. {Says}"
            : Says;
}

/// <summary>Decides readings against limits with a guard band.</summary>
/// <remarks>Guard w = r U with U = 2 u (ISO 14253-1, JCGM 106). u from the instrument's step, read to half of it and spread evenly
/// (step/2 over √3), and from repeats (s/√n): JCGM 100, evaluations of type B and A.</remarks>
public static class Measuring
{
    /// <summary>r = 1: below 2.5 % wrong passes (ILAC-G8). ISO 14253-1:2017 takes 0.83, below 5 %.</summary>
    public const double Guard = 1;

    private const double Coverage = 2;

    /// <param name="finding">One with a reading.</param>
    /// <param name="limits">The car's limits; the one for the same thing and the same quantity counts.</param>
    /// <param name="guard">The guard band as a multiple of U, 0 or more.</param>
    public static MeasuredAnswer Of(Finding finding, IEnumerable<Limit> limits, double guard = Guard)
    {
        var reading = finding.Reading!;
        var (mean, spread) = ((double)reading.Mean, Uncertainty(reading));
        var limit = limits.FirstOrDefault(
            one => one.Of == finding.Of && string.Equals(one.What, reading.What, StringComparison.OrdinalIgnoreCase));
        var band = limit is null ? null : Band(limit, reading.Unit);
        var beyond = band is { } known && (mean < known.Lower || mean > known.Upper);
        MeasuredAnswer Open(string says) =>
            new(finding, mean, spread, limit, null, null, null,
                beyond ? $"As it reads it is past the limit, {LimitWords.Of(limit!)}. {says}" : says)
            { IsBeyond = beyond };
        if (limit is null)
            return Open($"No limit is known for {reading.What} here. It stands in the maker's manual; enter it with its source.{Form(finding.Scale, reading.What)}");
        if (band is not var (lower, upper))
            return Open($"The limit is in {limit.Unit}, the reading in {reading.Unit}: one of them is wrong.");
        if (spread is not { } u)
            return Open("How sure the reading is, nobody knows: say the instrument's smallest step, or measure again and give all values.");
        if (u == 0)
            return Open("All values are alike and the instrument's smallest step is not said: say it.");
        var expanded = Coverage * u;
        if (upper - lower < 2 * guard * expanded)
            return Open("The guard bands meet: this instrument cannot pass anything here. Measure more finely.");
        var decision = LimitDecision.Of(mean, lower, upper, guard * expanded);
        var within = Conformity.Probability(mean, u, lower, upper);
        return new(finding, mean, u, limit, decision, within, LimitDecision.FalsePassProbability(guard),
            Told(reading, limit, expanded, guard, within))
        { IsBeyond = beyond };
    }

    /// <summary>The forms of test that a scale knows, to be offered where no limit is known.</summary>
    public static ValueList<TestForm> FormsOf(string scale) => ConditionScales.Find(scale)?.Tests ?? [];

    /// <summary>One sigma of the mean; null when nothing is known of it.</summary>
    public static double? Uncertainty(MeasuredValue reading)
    {
        double? step = reading.Resolution is { } resolution ? (double)resolution / 2 / Math.Sqrt(3) : null;
        double? repeats = reading.Values.Count > 1
            ? Math.Sqrt(reading.Values
                .Sum(value => Math.Pow((double)(value - reading.Mean), 2)) / (reading.Values.Count - 1) / reading.Values.Count)
            : null;
        return step is null && repeats is null ? null : Math.Sqrt(Math.Pow(step ?? 0, 2) + Math.Pow(repeats ?? 0, 2));
    }

    private static (double Lower, double Upper)? Band(Limit limit, string unit)
    {
        if (Units.Find(limit.Unit) is not { } from || Units.Find(unit) is not { } to || from.Dimension != to.Dimension)
            return null;
        return (limit.Lower is { } lower ? from.To(to, (double)lower) : double.NegativeInfinity,
            limit.Upper is { } upper ? from.To(to, (double)upper) : double.PositiveInfinity);
    }

    private static string Told(MeasuredValue reading, Limit limit, double expanded, double guard, double within)
    {
        var few = reading.Values.Count is > 1 and < 5 ? " Few repeats: their spread is itself poorly known." : "";
        return $"Limit {LimitWords.Of(limit)}; U = {Measure.Figure(expanded)} {reading.Unit} (k = 2), "
            + $"guard {guard:0.##} U; {within:0.0%} likely to be within.{few}";
    }

    private static string Form(string scale, string what) =>
        FormsOf(scale).FirstOrDefault(form => form.What == what) is { } form
            ? $" The test: {form.Says}; the limit is the {(form.IsMost ? "most" : "least")} allowed, in {form.Unit}."
            : "";
}
