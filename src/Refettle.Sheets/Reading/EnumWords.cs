using System.Globalization;
using System.Numerics;
using System.Text;

namespace Refettle.Sheets.Reading;

/// <summary>The words that stand for the values of an enumeration: <c>PressFit</c> is <c>press-fit</c>. Of flags each has a word, none
/// and several together have none.</summary>
internal static class EnumWords<T>
    where T : struct, Enum
{
    private static readonly Dictionary<string, T> _values = Enum.GetValues<T>()
        .Where(value => !typeof(T).IsDefined(typeof(FlagsAttribute), inherit: false)
            || BitOperations.IsPow2(Convert.ToInt64(value, CultureInfo.InvariantCulture))).ToDictionary(Of);

    public static IEnumerable<string> All => _values.Keys;

    public static bool TryParse(string word, out T value) => _values.TryGetValue(word, out value);

    public static string Of(T value)
    {
        var word = new StringBuilder();
        foreach (var letter in value.ToString())
        {
            if (char.IsUpper(letter) && word.Length > 0)
                word.Append('-');
            word.Append(char.ToLowerInvariant(letter));
        }

        return word.ToString();
    }
}
