namespace Refettle.QuickLine;

/// <summary>A part or joint with the words by which it can be meant.</summary>
/// <param name="Name">All words of its name.</param>
/// <param name="Head">What it is before anything else: <c>bush</c> of <c>Rear left damper lower bush</c>, <c>shield</c> of
/// <c>Heat shield above the tail box</c>.</param>
/// <param name="Qualifiers">Words that only say where or with what.</param>
/// <param name="More">Words of its identifier, and for a joint of the parts it holds.</param>
internal sealed record Nameable(
    string Thing, IReadOnlySet<string> Name, string Head, IReadOnlySet<string> Qualifiers, IReadOnlySet<string> More, Spot Spot,
    JointKind? Kind);

/// <summary>All things of a car that a line can be about, and how telling each word is.</summary>
internal sealed class Vocabulary
{
    private readonly Dictionary<string, double> _weights = [];
    private readonly Dictionary<string, (string Word, double Likeness)[]> _likes = [];

    private Vocabulary(List<Nameable> things)
    {
        Things = things;
        foreach (var named in things.SelectMany(thing => thing.Name.Concat(thing.More)).CountBy(word => word))
            _weights[named.Key] = Math.Log(1 + (things.Count / (double)named.Value));
    }

    public IReadOnlyList<Nameable> Things { get; }

    public static Vocabulary Of(Structure structure)
    {
        var names = structure.Parts.ToDictionary(part => part.Id, part => part.Name);
        var spots = structure.Parts.ToDictionary(part => part.Id, Spots.Of);
        return new([.. structure.Parts.Select(part => OfPart(part)), .. structure.Joints.Select(joint => OfJoint(joint, names, spots))]);
    }

    /// <summary>How telling a word is: rare words more than common ones (inverse document frequency); 0 for one that no name has.</summary>
    public double Weight(string word) => _weights.GetValueOrDefault(word);

    /// <summary>The words of names that a written word may stand for, each with its likeness up to 1.</summary>
    public (string Word, double Likeness)[] Like(string word) =>
        _likes.TryGetValue(word, out var known) ? known : _likes[word] = FindLike(word);

    private (string, double)[] FindLike(string word)
    {
        var found = new Dictionary<string, double>();
        if (_weights.ContainsKey(word))
            found[word] = 1;
        foreach (var other in Synonyms.Of(word).Where(_weights.ContainsKey))
            found.TryAdd(other, 0.9);
        if (found.Count == 0 && word.Length >= 4 && !word.Any(char.IsAsciiDigit) && !KindWords.IsAny(word))
        {
            foreach (var known in _weights.Keys.Where(known => known.Length >= 3 && known[0] == word[0]))
            {
                var slips = Slips.Between(word, known);
                if (slips <= (word.Length >= 7 ? 2 : 1))
                    found[known] = 1 - (0.8 * slips / word.Length);
            }
        }

        return [.. found.Select(pair => (pair.Key, pair.Value)).OrderByDescending(pair => pair.Value)
            .ThenBy(pair => pair.Key, StringComparer.Ordinal).Take(4)];
    }

    private static Nameable OfPart(Part part)
    {
        var name = Words(part.Name);
        var (head, qualifiers) = HeadOf(part.Name);
        return new($"part {part.Id}", name, head, qualifiers, Words(part.Id.Replace('-', ' ')).Except(name).ToHashSet(), Spots.Of(part),
            null);
    }

    private static Nameable OfJoint(Joint joint, Dictionary<string, string> names, Dictionary<string, Spot> spots)
    {
        var holds = joint.Holds.Select(part => names.GetValueOrDefault(part, part)).ToList();
        var kind = joint.Kind.ToString().ToLowerInvariant();
        var name = joint.Name is { } said ? Words(said) : Words($"{kind} {holds[0]}");
        var more = Words($"{joint.Id.Replace('-', ' ')} {kind} {string.Join(' ', holds)}").Except(name).ToHashSet();
        var spot = joint.Holds.Select(part => spots.GetValueOrDefault(part)).FirstOrDefault(spot => spot != Spot.None);
        var (head, qualifiers) = HeadOf(joint.Name ?? $"{holds[0]} {kind}");
        return new($"joint {joint.Id}", name, head, qualifiers, more, spot, joint.Kind);
    }

    /// <summary>The last word before anything that only says where or with what, sides apart.</summary>
    private static (string Head, HashSet<string> Qualifiers) HeadOf(string name)
    {
        var plain = name.Split(", ")[0];
        var words = LineWords.Split(plain);
        var end = words.FindIndex(1, Math.Max(0, words.Count - 1), Joining.Contains);
        var first = end < 0 ? plain : string.Join(' ', words.Take(end));
        var head = LineWords.Of(first).Where(word => word is not ("left" or "right" or "front" or "rear")).LastOrDefault() ?? "";
        return (head, [.. Words(name).Except(Words(first))]);
    }

    private static readonly HashSet<string> Joining = ["at", "in", "on", "to", "of", "with", "between", "behind", "below", "above", "from",
        "over", "round", "along", "for", "and", "into", "under"];

    private static HashSet<string> Words(string text) => [.. LineWords.Of(text).Where(word => !LineWords.SaysNothing(word))];
}
