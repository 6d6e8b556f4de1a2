namespace Refettle.QuickLine;

/// <summary>A thing that a line may be about.</summary>
/// <param name="Score">Higher is better; comparable within one line only.</param>
/// <param name="Fit">The share of the line's telling words that its names hold, 0 to 1.</param>
internal readonly record struct Match(Nameable Thing, double Score, double Fit);

/// <summary>Which leaning a line has: towards parts or towards joints.</summary>
internal enum Leaning
{
    Parts,
    Either,
    Joints,
}

/// <summary>Finds what a line is about: the words of each name weighed by how telling they are, with what the name
/// has beyond the line against it.</summary>
internal static class ThingMatcher
{
    private const double OtherWordOfName = 0.30;
    private const double OtherQualifier = 0.12;
    private const double HeadSaid = 0.8;
    private const double HeadUnsaid = 1.6;
    private const double WordAfterwards = 0.6;
    private const double WordOfMore = 0.55;
    private const double WrongSide = 7;
    private const double Lean = 2.2;
    private const double SideWeight = 2.2;
    private const double Least = 1.5;

    private static readonly HashSet<string> SideWords = ["left", "right", "front", "rear"];

    /// <summary>Best first; empty when no word of the line is in any name.</summary>
    public static List<Match> Find(Vocabulary vocabulary, IReadOnlyList<string> words, Leaning leaning)
    {
        var told = Told(vocabulary, words);
        if (!told.Any(word => !SideWords.Contains(word.Word)))
            return [];
        var most = told.Sum(word => word.Like.Max(like => like.Likeness * Weight(vocabulary, like.Word)));
        var sides = words.Where(SideWords.Contains).ToHashSet();
        return vocabulary.Things.Select(thing => Judge(vocabulary, thing, told, sides, leaning, most)).Where(match => match.Score > Least)
            .OrderByDescending(match => match.Score).ThenBy(match => match.Thing.Name.Count)
            .ThenBy(match => match.Thing.Thing, StringComparer.Ordinal).ToList();
    }

    /// <summary>The words that names have, once each, with what they may stand for. A thing is named
    /// first and described after: what follows a word of condition counts less.</summary>
    private static List<(string Word, (string Word, double Likeness)[] Like)> Told(Vocabulary vocabulary, IReadOnlyList<string> words)
    {
        var told = new List<(string Word, (string Word, double Likeness)[] Like)>();
        var described = false;
        foreach (var word in words.Where(word => !LineWords.SaysNothing(word)))
        {
            var like = vocabulary.Like(word);
            if (like.Length > 0 && told.TrueForAll(known => known.Word != word))
                told.Add((word, described ? [.. like.Select(one => (one.Word, one.Likeness * WordAfterwards))] : like));
            described |= KindWords.Condition.Contains(word) && told.Exists(known => !SideWords.Contains(known.Word));
        }

        return told;
    }

    private static Match Judge(
        Vocabulary vocabulary, Nameable thing, List<(string Word, (string Word, double Likeness)[] Like)> told, HashSet<string> sides,
        Leaning leaning, double most)
    {
        var covered = new HashSet<string>();
        var (score, telling) = (0.0, false);
        foreach (var (word, like) in told)
        {
            var (best, by) = (0.0, "");
            foreach (var (known, likeness) in like)
            {
                var share = thing.Name.Contains(known) ? 1 : thing.More.Contains(known) ? WordOfMore : 0;
                if (share > 0 && share * likeness * Weight(vocabulary, known) > best)
                    (best, by) = (share * likeness * Weight(vocabulary, known), known);
            }

            score += best;
            if (best > 0)
                covered.Add(by);
            telling |= best > 0 && !SideWords.Contains(word);
        }

        if (!telling)
            return new(thing, 0, 0);
        var fit = Math.Min(1, score / most);
        score -= thing.Name.Where(word => !covered.Contains(word))
            .Sum(word => (thing.Qualifiers.Contains(word) ? OtherQualifier : OtherWordOfName) * Weight(vocabulary, word));
        score += covered.Contains(thing.Head) ? HeadSaid : -HeadUnsaid;
        return new(thing, score + Leans(thing, leaning) - (Contradicts(thing, sides) ? WrongSide : 0), fit);
    }

    private static double Weight(Vocabulary vocabulary, string word) => SideWords.Contains(word) ? SideWeight : vocabulary.Weight(word);

    private static double Leans(Nameable thing, Leaning leaning) => (leaning, thing.Kind is null) switch
    {
        (Leaning.Parts, true) or (Leaning.Joints, false) => Lean,
        (Leaning.Parts, false) or (Leaning.Joints, true) => -Lean,
        _ => 0,
    };

    /// <summary>The line says one side and the thing is on the other.</summary>
    private static bool Contradicts(Nameable thing, HashSet<string> sides) =>
        Against(thing, sides, "left", "right") || Against(thing, sides, "front", "rear");

    private static bool Against(Nameable thing, HashSet<string> sides, string one, string other)
    {
        var (said, opposite) = (sides.Contains(one), sides.Contains(other));
        if (said == opposite)
            return false;
        var (mine, against) = said ? (one, other) : (other, one);
        var spot = thing.Spot.Words().ToLowerInvariant();
        return (thing.Name.Contains(against) || spot.Contains(against, StringComparison.Ordinal)) && !thing.Name.Contains(mine)
            && !spot.Contains(mine, StringComparison.Ordinal);
    }
}
