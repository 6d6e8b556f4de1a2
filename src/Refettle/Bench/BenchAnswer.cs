namespace Refettle.Bench;

/// <summary>One value of an answer.</summary>
/// <param name="Low">The least it may be, given the uncertainty stated with the answer; null when not known.</param>
/// <param name="High">The most it may be.</param>
public sealed record BenchValue(string Name, double Value, Unit Unit, double? Low = null, double? High = null)
{
    /// <summary>The same value in another unit of its dimension; a range is turned along.</summary>
    public BenchValue In(Unit unit) => new(Name, Unit.To(unit, Value), unit, Turn(Low, unit), Turn(High, unit));

    public override string ToString() =>
        $"{Name}: {new Measure(Value, Unit)}"
        + (Low is { } low && High is { } high ? $" ({Measure.Figure(low)} to {new Measure(high, Unit)})" : "");

    private double? Turn(double? value, Unit unit) => value is { } known ? Unit.To(unit, known) : null;
}

/// <summary>What a number's function found.</summary>
/// <param name="Values">One or more.</param>
public sealed record Outcome(ValueList<BenchValue> Values)
{
    /// <summary>The decision, in words, when the number is one: <c>scrap</c>, <c>pass</c>.</summary>
    public string? Verdict { get; init; }

    public ValueList<string> Cautions { get; init; } = [];

    /// <summary>A good result of these values.</summary>
    public static Result<Outcome> Of(params ValueList<BenchValue> values) => Result<Outcome>.Good(new(values));

    /// <summary>A good result with cautions; those that are null are left out.</summary>
    public static Result<Outcome> Judged(ValueList<BenchValue> values, string? verdict, params IEnumerable<string?> cautions) =>
        Result<Outcome>.Good(new(values) { Verdict = verdict, Cautions = cautions.OfType<string>().ToValueList() });

    /// <summary>No result: one fault.</summary>
    public static Result<Outcome> Refuse(string place, string found, string mend) => Result<Outcome>.Bad(new Fault(place, found, mend));
}

/// <summary>An input as it was understood.</summary>
/// <param name="Origin">Where it comes from when it was not given; null when it was.</param>
public sealed record Understood(string Name, string Text, string? Origin);

/// <summary>A bench number worked out: everything that is needed to judge it.</summary>
public sealed record BenchAnswer
{
    /// <summary>Stands beside every answer.</summary>
    public const string MakerFirst = "The vehicle maker's figure comes first. This is a general figure, for want of one or to check one.";

    public required string Number { get; init; }

    public required string Says { get; init; }

    public required ValueList<BenchValue> Values { get; init; }

    public string? Verdict { get; init; }

    public required ValueList<Understood> Inputs { get; init; }

    public required string Formula { get; init; }

    public required string Source { get; init; }

    /// <summary>How far to trust it, in words.</summary>
    public required string Uncertainty { get; init; }

    public ValueList<string> Cautions { get; init; } = [];

    public string Note { get; init; } = MakerFirst;

    /// <summary>The answer with every value of the unit's dimension turned into that unit.</summary>
    public BenchAnswer In(Unit unit) => this with
    {
        Values = Values.Select(value => value.Unit.Dimension == unit.Dimension ? value.In(unit) : value).ToValueList(),
    };
}
