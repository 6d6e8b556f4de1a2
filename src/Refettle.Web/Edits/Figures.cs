using System.Globalization;
using Refettle.Logbook;

namespace Refettle.Web.Edits;

/// <summary>Reads figures that were typed, collecting what is wrong with them.</summary>
public sealed class Figures(string place)
{
    private readonly List<Fault> _faults = [];

    public ValueList<Fault> Faults => _faults.ToValueList();

    /// <summary>A number; a comma counts as a point. Null for an empty field.</summary>
    public decimal? Maybe(string what, string? typed)
    {
        if (string.IsNullOrWhiteSpace(typed))
            return null;
        if (TypedNumber.Of(typed) is { } value)
            return value;
        _faults.Add(new(place, $"{what} is “{typed.Trim()}”", TypedNumber.Mend(typed, "Write a number.")) { Path = what });
        return null;
    }

    /// <summary>A number that has to be there.</summary>
    public decimal Number(string what, string? typed)
    {
        if (string.IsNullOrWhiteSpace(typed))
            _faults.Add(new(place, $"{what} is empty", "Write a number.") { Path = what });
        return Maybe(what, typed) ?? 0;
    }

    public int Count(string what, string? typed)
    {
        var value = Number(what, typed);
        if (value == Math.Floor(value) && Math.Abs(value) < int.MaxValue)
            return (int)value;
        _faults.Add(new(place, $"{what} is {value}", "Write a whole number.") { Path = what });
        return 0;
    }

    /// <summary>An entry of what was typed, when every figure could be read and the log takes it. Faults tell the place as
    /// it is called where it is typed.</summary>
    /// <param name="thing">What the log's check calls it.</param>
    public Result<T> Checked<T>(CarHistory history, T entry, string thing) where T : Happening
    {
        var faults = _faults.Count > 0
            ? Faults
            : HappeningCheck.Of(history, entry).Select(fault => fault.Place == thing ? fault with { Place = place } : fault).ToValueList();
        return faults.Count > 0 ? Result<T>.Bad(faults) : Result<T>.Good(entry);
    }

    public static string Text(decimal? value) => value?.ToString("0.####", CultureInfo.InvariantCulture) ?? "";
}
