namespace Refettle.Stuck;

/// <summary>Which places of a car a try destroys: a ladder names them in words, as it knows no car.</summary>
public static class TryPlaces
{
    /// <summary>The word of ladders for whatever holds the joint.</summary>
    public const string AnyFastener = "new fastener";

    /// <summary>The joint itself where the word is of its fastener, else those parts it holds that are called so.</summary>
    /// <param name="word">As the ladder has it: <c>bolt</c>, <c>new fastener</c>, <c>bush</c>.</param>
    /// <returns>Things: <c>joint x</c>, <c>part x</c>; empty where nothing is clearly meant.</returns>
    public static IEnumerable<string> Of(Joint joint, string word, IReadOnlyDictionary<string, Part> parts) =>
        word == AnyFastener || IsWordOf(joint.Kind.ToString(), word) ? [$"joint {joint.Id}"]
        : joint.Holds.Where(part => !parts[part].Fixed && (part == word || IsWordOf(parts[part].Name, word)))
            .Select(part => $"part {part}");

    /// <summary>Whether a name has the word in it, as one or as several.</summary>
    public static bool IsWordOf(string name, string word) =>
        name.Split(' ', '-', ',').Any(part => new[] { word, $"{word}s", $"{word}es" }.Contains(part, StringComparer.OrdinalIgnoreCase));
}
