namespace Refettle.Access;

/// <summary>What is done when a state is taken back, in a mechanic's words: <c>Fill the fuel tank</c>.</summary>
/// <remarks>A description names a state by what it is once it is brought about; what that ends with says what the way back is.</remarks>
internal static class Undoing
{
    private static readonly (string End, string Before, string After)[] _words =
    [
        ("drained, circuit open", "Fill", ", circuit closed"), ("drained", "Fill", ""), ("drawn off", "Fill", ""),
        ("recovered", "Fill", " again: licensed people"),
        ("disconnected", "Connect", ""), ("made safe", "Connect", " again, as the maker says"), ("propped", "Take the prop from", ""),
        ("held from above", "Take the hoist from", ""),
        ("tied straight ahead", "Untie", ""),
    ];

    public static string Says(string state) =>
        _words.FirstOrDefault(one => state.EndsWith($" {one.End}", StringComparison.OrdinalIgnoreCase)) is { End: { } end } found
        ? $"{found.Before} the {Lowered(state[..^(end.Length + 1)])}{found.After}" : $"Undo: {state}";

    /// <summary>As within a sentence; what is written in capitals stays.</summary>
    private static string Lowered(string name) =>
        name.Length > 1 && char.IsUpper(name[1]) ? name : $"{char.ToLowerInvariant(name[0])}{name[1..]}";
}
