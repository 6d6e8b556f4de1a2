using System.Text;

namespace Refettle.Kits;

/// <summary>Names in braces: <c>{p}drum</c> has one, <c>p</c>.</summary>
public static class Braces
{
    /// <summary>The names, in order.</summary>
    public static IEnumerable<string> In(string text)
    {
        for (var open = text.IndexOf('{'); open >= 0; open = text.IndexOf('{', open + 1))
        {
            var close = text.IndexOf('}', open);
            if (close > open)
                yield return text[(open + 1)..close];
        }
    }

    /// <summary>Puts values in place of names; a name without value stays as it is.</summary>
    public static string Fill(string text, IReadOnlyDictionary<string, string> values)
    {
        if (!text.Contains('{'))
            return text;
        var filled = new StringBuilder(text);
        foreach (var name in In(text).Distinct())
        {
            if (values.TryGetValue(name, out var value))
                filled.Replace($"{{{name}}}", value);
        }

        return filled.ToString();
    }
}
