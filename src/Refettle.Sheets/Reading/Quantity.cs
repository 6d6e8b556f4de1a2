using System.Buffers;
using System.Globalization;

namespace Refettle.Sheets.Reading;

/// <summary>Numbers with units.</summary>
internal static class Quantity
{
    private static readonly SearchValues<char> _digits = SearchValues.Create("+-0123456789.,");

    private static readonly (string Unit, decimal Factor)[] _minutes = [("min", 1), ("h", 60), ("s", 1 / 60m)];

    private static readonly (string Unit, decimal Factor)[] _kilograms = [("kg", 1), ("g", 0.001m)];

    /// <summary>Factors: NIST Special Publication 811, appendix B.8 (1 lbf·ft = 1.355 818 N·m, 1 kgf·m = 9.806 65 N·m).</summary>
    private static readonly (string Unit, decimal Factor)[] _newtonMetres =
    [
        ("N·m", 1), ("Nm", 1), ("N.m", 1), ("N*m", 1), ("lbf·ft", 1.3558179483m), ("lbf.ft", 1.3558179483m), ("lbf*ft", 1.3558179483m),
        ("lbfft", 1.3558179483m),
        ("ft·lbf", 1.3558179483m), ("kgf·m", 9.80665m), ("kgf.m", 9.80665m), ("kgf*m", 9.80665m), ("kgfm", 9.80665m),
    ];

    /// <summary>Reads a time; otherwise says what is wrong and what is right.</summary>
    public static bool TryMinutes(string text, out decimal minutes, out string found, out string mend) =>
        TryRead(text, _minutes, "a time", "6 min, 0.5 h or 30 s", out minutes, out found, out mend);

    public static bool TryKilograms(string text, out decimal kilograms, out string found, out string mend) =>
        TryRead(text, _kilograms, "a mass", "2.1 kg or 300 g", out kilograms, out found, out mend);

    public static bool TryNewtonMetres(string text, out decimal torque, out string found, out string mend) =>
        TryRead(text, _newtonMetres, "a torque", "60 N·m, 45 lbf·ft or 6 kgf·m", out torque, out found, out mend);

    /// <summary>Reads a number with a decimal point and no unit.</summary>
    public static bool TryNumber(string text, out decimal number) =>
        decimal.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out number)
        && Math.Abs(number) < 1_000_000_000_000m;

    private static bool TryRead(string text, (string Unit, decimal Factor)[] units, string what, string examples, out decimal value,
        out string found, out string mend)
    {
        (found, mend, value) = ("", "", 0);
        var trimmed = text.Trim();
        var end = trimmed.AsSpan().IndexOfAnyExcept(_digits);
        var unit = end < 0 ? "" : trimmed[end..].Trim();
        var digits = (end < 0 ? trimmed : trimmed[..end]).Trim();
        if (!TryNumber(digits, out var number))
            (found, mend) =
                ($"\"{text}\" is not {what}", $"Write it like {examples}{(digits.Contains(',') ? ", with a decimal point" : "")}");
        else if (unit.Length == 0)
            (found, mend) = ($"\"{text}\" has no unit", $"Write it like {examples}");
        else if (Array.Find(units, known => known.Unit == unit) is { Unit: not null } known)
            value = decimal.Round(number * known.Factor, 4);
        else
            (found, mend) = ($"\"{unit}\" is not a unit of {what[2..]}", $"Write it like {examples}");
        return found.Length == 0;
    }
}
