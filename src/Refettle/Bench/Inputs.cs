namespace Refettle.Bench;

/// <summary>The kinds of input. Each refuses wrong units and values outside its range, and says the range.</summary>
public static class Inputs
{
    /// <summary>A quantity in the given unit, both ends of the range allowed; read in any unit of the same dimension.</summary>
    public static Input<double> Quantity(string name, string says, Unit unit, double least, double most) => new()
    {
        Name = name,
        Says = says,
        Accepts = Range(unit, least, most),
        Unit = unit,
        Reader = text => ReadQuantity(name, text, unit, least, most),
    };

    /// <summary>A quantity of any dimension, with its unit.</summary>
    public static Input<Measure> Any(string name, string says) => new()
    {
        Name = name,
        Says = says,
        Accepts = "a number with its unit",
        Reader = text => Measure.Read(name, text, null),
    };

    /// <summary>A whole number, both ends of the range allowed.</summary>
    public static Input<int> Count(string name, string says, int least, int most) => new()
    {
        Name = name,
        Says = says,
        Accepts = $"a whole number, {least} to {most}",
        Reader = text => int.TryParse(text, out var value) && value >= least && value <= most
            ? Result<int>.Good(value)
            : Bad<int>(name, $"'{text}' is not a whole number from {least} to {most}", $"Give {least} to {most}"),
    };

    /// <summary>One of a few words; case does not matter.</summary>
    public static Input<string> Choice(string name, string says, params ValueList<string> words) => new()
    {
        Name = name,
        Says = says,
        Accepts = string.Join(" | ", words),
        Words = words,
        Reader = text => words.FirstOrDefault(word => word.Equals(text.Trim(), StringComparison.OrdinalIgnoreCase)) is { } word
            ? Result<string>.Good(word)
            : Bad<string>(name, $"'{text}' is not known", "Give one of: " + string.Join(", ", words)),
    };

    /// <summary>Quantities with commas between; a unit at the last one serves those without.</summary>
    public static Input<ValueList<double>> List(string name, string says, Unit unit, double least, double most, int fewest, int greatest) =>
        new()
        {
            Name = name,
            Says = says,
            Accepts = $"{fewest} to {greatest} values with commas between, each {Range(unit, least, most)}",
            Unit = unit,
            Reader = text => ReadList(name, text, unit, least, most, fewest, greatest),
        };

    /// <summary>A point as two lengths: outward from the middle of the car, then up from the ground.</summary>
    public static Input<ValueList<double>> Point(string name, string says) =>
        List(name, says, Units.Millimetre, -3000, 3000, 2, 2) with
        { Accepts = "outward and up with a comma between, each -3000 to 3000 mm" };

    private static string Range(Unit unit, double least, double most) =>
        $"{Measure.Figure(least)} to {new Measure(most, unit)}";

    private static Result<double> ReadQuantity(string name, string text, Unit unit, double least, double most)
    {
        var read = Measure.Read(name, text, unit.Dimension);
        if (!read.IsGood)
            return Result<double>.Bad(read.Faults.Select(fault => fault with { Mend = fault.Mend + $" ({Range(unit, least, most)})" }));
        var value = read.Value.In(unit);
        return value >= least && value <= most
            ? Result<double>.Good(value)
            : Bad<double>(name, $"{read.Value} is {(value < least ? "below" : "above")} the range", "Give " + Range(unit, least, most));
    }

    private static Result<ValueList<double>> ReadList(
        string name, string text, Unit unit, double least, double most, int fewest, int greatest)
    {
        var pieces = text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        if (pieces.Length < fewest || pieces.Length > greatest)
            return Bad<ValueList<double>>(name, $"{pieces.Length} values", $"Give {fewest} to {greatest} with commas between");
        var suffix = string.Concat(pieces[^1].SkipWhile(c => !char.IsLetter(c) && c is not ('°' or '%' or '′')));
        var results = pieces.Select(piece => ReadQuantity(name, piece.All(IsFigure) ? piece + suffix : piece, unit, least, most)).ToList();
        var faults = results.SelectMany(result => result.Faults).ToList();
        return faults.Count > 0
            ? Result<ValueList<double>>.Bad(faults)
            : Result<ValueList<double>>.Good(results.Select(result => result.Value).ToValueList());
    }

    private static bool IsFigure(char c) => char.IsDigit(c) || c is '.' or '-' or '+' or '/' or ' ' or '−';

    private static Result<T> Bad<T>(string name, string found, string mend) => Result<T>.Bad(new Fault(name, found, mend));
}
