using System.Globalization;
using System.Text.RegularExpressions;

namespace Refettle.Bench;

/// <summary>A number with its unit, as it was written: <c>48 N·m</c>, <c>3/8 in</c>.</summary>
public readonly partial record struct Measure(double Value, Unit Unit)
{
    /// <summary>No number read is greater, so that in whatever unit it can be told exactly.</summary>
    private const double Most = 1e15;

    /// <summary>The value in another unit of the same dimension.</summary>
    public double In(Unit unit) => Unit.To(unit, Value);

    /// <summary>Reads a number and the unit behind it. Numbers have a decimal point or are fractions:
    /// <c>0.375</c>, <c>3/8</c>, <c>1 1/2</c>.</summary>
    /// <param name="place">The name of the input, for faults.</param>
    /// <param name="dimension">What it must measure; null for anything.</param>
    public static Result<Measure> Read(string place, string text, Dimension? dimension)
    {
        var match = Form().Match(text.Trim().Replace('−', '-'));
        if (!match.Success || Number(match) is not { } value || !double.IsFinite(value))
            return Bad(place, $"'{text}' is not a number with a unit", dimension);
        if (Math.Abs(value) > Most)
            return Bad(place, $"'{text}' is more than anything on a car", dimension);
        var word = match.Groups["unit"].Value;
        if (word.StartsWith(',') || word.StartsWith('/'))
            return Bad(place, $"'{text}' is not a number that is understood here", dimension,
                "Write a decimal point (48.5) or a fraction (3/8). ");
        var unit = dimension is { } wanted ? Units.Find(wanted, word) : Units.Find(word);
        return unit is not null ? Result<Measure>.Good(new(value, unit)) : Bad(place, WrongUnit(text, word), dimension);
    }

    public override string ToString() =>
        Unit.Symbol is { Length: > 0 } symbol ? Figure(Value) + (symbol is "°" or "′" ? "" : " ") + symbol : Figure(Value);

    /// <summary>Four significant digits, without an exponent between 0.0001 and 10 million.</summary>
    public static string Figure(double value)
    {
        if (value == 0)
            return "0";
        if (Math.Abs(value) is >= 1e7 or < 1e-4)
            return value.ToString("0.###e0", CultureInfo.InvariantCulture);
        var digits = Math.Clamp(3 - (int)Math.Floor(Math.Log10(Math.Abs(value))), 0, 8);
        return Math.Round(value, digits).ToString("0.########", CultureInfo.InvariantCulture);
    }

    private static double? Number(Match match)
    {
        if (match.Groups["decimal"] is { Success: true } whole)
            return double.Parse(whole.Value, CultureInfo.InvariantCulture);
        var (sign, add) = (match.Groups["sign"].Value == "-" ? -1 : 1, match.Groups["whole"]);
        var (above, below) = (Plain(match.Groups["above"]), Plain(match.Groups["below"]));
        return below == 0 ? null : sign * ((add.Success ? Plain(add) : 0) + above / below);
    }

    private static double Plain(Group digits) => double.Parse(digits.Value, CultureInfo.InvariantCulture);

    private static string WrongUnit(string text, string word) => word.Length == 0
        ? $"'{text}' has no unit"
        : Units.Find(word) is { } other
        ? $"'{text}' is {Article(other.Dimension)} {Word(other.Dimension)}"
        : $"'{text}': the unit '{word}' is not known";

    private static Result<Measure> Bad(string place, string found, Dimension? dimension, string mend = "") =>
        Result<Measure>.Bad(new Fault(place, found, mend + (dimension switch
        {
            null => "Write a number with its unit, such as 48 N·m",
            Dimension.Number => "Write a bare number, such as 0.20",
            { } wanted => $"Write {Article(wanted)} {Word(wanted)} in one of: {Units.Of(wanted)}",
        })));

    private static string Article(Dimension dimension) => "aeiou".Contains(Word(dimension)[0], StringComparison.Ordinal) ? "an" : "a";

    private static string Word(Dimension dimension) => dimension switch
    {
        Dimension.Number => "bare number",
        Dimension.Share => "percentage",
        Dimension.SpringRate => "spring rate",
        Dimension.AnglePerLength => "angle per length",
        Dimension.TemperatureStep => "temperature difference",
        Dimension.Spreading => "spreading rate",
        _ => dimension.ToString().ToLowerInvariant(),
    };

    [GeneratedRegex(@"^(?:(?<sign>[+-]?)(?:(?<whole>\d+)\s+)?(?<above>\d+)/(?<below>\d+)|(?<decimal>[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?))\s*(?<unit>.*)$")]
    private static partial Regex Form();
}
