using Refettle.Web.Words;

namespace Refettle.Web.Find;

/// <summary>Something that can be looked for.</summary>
/// <param name="Key">What the page does with it: a fact or an identifier.</param>
/// <param name="Name">As shown.</param>
/// <param name="More">Further words it is found by: identifier, zone, side.</param>
/// <param name="Rank">Of two that are found equally well the smaller comes first.</param>
public sealed record Findable(string Key, string Name, string More, int Rank = 0)
{
    public static IEnumerable<Findable> Parts(CarLookup car) =>
        car.Car.Structure.Parts.Select(part => new Findable(part.Id, part.Name, Goals.More(car, part)));

    public static IEnumerable<Findable> Joints(CarLookup car) =>
        car.Car.Structure.Joints.Select(joint => new Findable(joint.Id, car.JointName(joint), joint.Id));
}

/// <summary>Finds by words: each word typed must begin, or else be within, a word of the thing.</summary>
public static class Finder
{
    private const int Start = 4;
    private const int Within = 1;

    /// <summary>Best first: words that begin the name count most, short names before long ones.</summary>
    public static IEnumerable<Findable> Find(IEnumerable<Findable> things, string typed, int most)
    {
        var words = Words(typed);
        return words.Length == 0
            ? things.Take(most)
            : things.Select(thing => (thing, Score: Score(thing, words)))
                .Where(found => found.Score > 0)
                .OrderByDescending(found => found.Score)
                .ThenBy(found => found.thing.Rank)
                .ThenBy(found => found.thing.Name.Length)
                .ThenBy(found => found.thing.Name, StringComparer.Ordinal)
                .Take(most)
                .Select(found => found.thing);
    }

    private static int Score(Findable thing, string[] words)
    {
        var (name, more) = (Words(thing.Name), Words(thing.More));
        var total = 0;
        foreach (var word in words)
        {
            var score = Math.Max(2 * Score(name, word), Score(more, word));
            if (score == 0)
                return 0;
            total += score;
        }

        return total;
    }

    private static int Score(string[] words, string typed) =>
        words.Any(word => word.StartsWith(typed, StringComparison.Ordinal)) ? Start
        : words.Any(word => word.Contains(typed, StringComparison.Ordinal)) ? Within
        : 0;

    private static string[] Words(string text) =>
        text.ToLowerInvariant().Split([' ', '-', '(', ')', ',', '.', ':', '_', '·'], StringSplitOptions.RemoveEmptyEntries);
}
