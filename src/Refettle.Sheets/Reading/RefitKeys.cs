using Refettle.Sheets.Tree;

namespace Refettle.Sheets.Reading;

/// <summary>The keys of a refit way where they stand in one row with those of its thing, in a table
/// or by hand: <c>refit-takes</c>.</summary>
internal static class RefitKeys
{
    /// <summary>The key that they stand below in a sheet.</summary>
    public const string Name = "refit";

    public const string Prefix = "refit-";

    public const string Takes = "refit-takes";

    public static readonly string[] All = ["tool", "takes", "clear", "posture", "cautions", "danger"];

    public static bool Is(string key) => key.StartsWith(Prefix, StringComparison.Ordinal);

    /// <summary>As it is called in a sheet.</summary>
    public static Pair Plain(Pair pair) => pair with { Key = pair.Key with { Text = pair.Key.Text[Prefix.Length..] } };

    /// <param name="keys">One or more, as they are called in a sheet.</param>
    public static Pair Below(IReadOnlyList<Pair> keys)
    {
        var first = keys[0].Key;
        return new(first with { Text = Name }, new Mapping(first.Line, first.Column, keys));
    }
}
