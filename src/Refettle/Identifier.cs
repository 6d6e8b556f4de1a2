namespace Refettle;

/// <summary>The form of names that other things refer to.</summary>
public static class Identifier
{
    /// <summary>The longest identifier that is accepted.</summary>
    public const int MaxLength = 80;

    /// <summary>Small letters, digits, <c>-</c>, <c>_</c> and <c>.</c>, beginning with a letter or digit.</summary>
    public static bool IsValid(string? text) =>
        text is { Length: > 0 and <= MaxLength } && IsStart(text[0]) && text.All(IsInner);

    /// <summary>An identifier with names in braces, as kits have them: <c>{p}drum</c>, <c>{hub}</c>.</summary>
    public static bool IsTemplate(string? text) =>
        text is { Length: > 0 and <= MaxLength } && text.All(c => IsInner(c) || c is '{' or '}');

    /// <summary>The identifier nearest to a name: <c>Rear axle (left)</c> gives <c>rear-axle-left</c>; empty when nothing is left.</summary>
    public static string From(string name)
    {
        var words = new string(name.ToLowerInvariant().Select(c => IsStart(c) ? c : ' ').ToArray());
        var text = string.Join('-', words.Split(' ', StringSplitOptions.RemoveEmptyEntries));
        return text.Length <= MaxLength ? text : text[..MaxLength].TrimEnd('-');
    }

    private static bool IsStart(char c) => c is >= 'a' and <= 'z' or >= '0' and <= '9';

    private static bool IsInner(char c) => IsStart(c) || c is '-' or '_' or '.';
}
