using System.Buffers;

namespace Refettle;

/// <summary>The form of names that other things refer to.</summary>
public static class Identifier
{
    /// <summary>The longest identifier that is accepted.</summary>
    public const int MaxLength = 80;

    private const string Letters = "abcdefghijklmnopqrstuvwxyz0123456789-_.";

    private static readonly SearchValues<char> Inner = SearchValues.Create(Letters);

    private static readonly SearchValues<char> Template = SearchValues.Create(Letters + "{}");

    /// <summary>Small letters, digits, <c>-</c>, <c>_</c> and <c>.</c>, beginning with a letter or digit.</summary>
    public static bool IsValid(string? text) =>
        text is { Length: > 0 and <= MaxLength } && IsStart(text[0]) && !text.AsSpan().ContainsAnyExcept(Inner);

    /// <summary>An identifier with names in braces, as kits have them: <c>{p}drum</c>, <c>{hub}</c>.</summary>
    public static bool IsTemplate(string? text) =>
        text is { Length: > 0 and <= MaxLength } && !text.AsSpan().ContainsAnyExcept(Template);

    /// <summary>The identifier nearest to a name: <c>Rear axle (left)</c> gives
    /// <c>rear-axle-left</c>; empty when nothing is left.</summary>
    public static string From(string name)
    {
        var words = new string(name.ToLowerInvariant().Select(c => IsStart(c) ? c : ' ').ToArray());
        var text = string.Join('-', words.Split(' ', StringSplitOptions.RemoveEmptyEntries));
        return text.Length <= MaxLength ? text : text[..MaxLength].TrimEnd('-');
    }

    private static bool IsStart(char c) => c is >= 'a' and <= 'z' or >= '0' and <= '9';
}
