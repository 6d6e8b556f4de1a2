using System.Globalization;
using System.Text.RegularExpressions;

namespace Refettle.Web.Edits;

/// <summary>A plain number as somebody types it: a comma counts as a point, unless it may as well stand between thousands.</summary>
public static partial class TypedNumber
{
    /// <summary>Null where it is no number, or may be two.</summary>
    public static decimal? Of(string typed) => !IsDoubtful(typed)
        && decimal.TryParse(typed.Trim().Replace(',', '.'), NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign,
            CultureInfo.InvariantCulture, out var value) ? value : null;

    /// <summary>What to write instead.</summary>
    /// <param name="otherwise">Where it is no number at all.</param>
    public static string Mend(string typed, string otherwise) => IsDoubtful(typed)
        ? $"It may be {typed.Trim().Replace(",", "", StringComparison.Ordinal)} or {typed.Trim().Replace(',', '.')}: write the one that is meant."
        : otherwise;

    private static bool IsDoubtful(string typed) => Thousands().IsMatch(typed.Trim());

    /// <summary><c>1,500</c>; not <c>0,500</c> nor <c>1500,000</c>, which have no thousands.</summary>
    [GeneratedRegex(@"^-?[1-9]\d{0,2},\d{3}$")]
    private static partial Regex Thousands();
}
