using System.Text.RegularExpressions;

namespace Refettle.Kits;

/// <summary>Left for right in identifiers and texts.</summary>
internal static partial class MirrorNames
{
    /// <summary>The identifier with every side's code for the other side's: <c>rl-hub</c> gives
    /// <c>rr-hub</c>; unchanged when it has none.</summary>
    public static string Of(string id) => Spots.MirrorOf(id);

    /// <summary>The text with left for right and right for left, as capitalized as before.</summary>
    public static string InText(string text) => Sides().Replace(text, match => match.Value switch
    {
        "left" => "right",
        "Left" => "Right",
        "LEFT" => "RIGHT",
        "right" => "left",
        "Right" => "Left",
        _ => "LEFT",
    });

    [GeneratedRegex(@"\b(left|Left|LEFT|right|Right|RIGHT)\b")]
    private static partial Regex Sides();
}
