using System.Text.RegularExpressions;

namespace Refettle.QuickLine;

/// <summary>Lines about several bags at once: where they lie, that they are empty.</summary>
internal static partial class BagsLine
{
    /// <summary>Null when the line speaks of one bag. Which of several holds what is not guessed, nor what lies between two numbers: such
    /// a line is a note.</summary>
    /// <param name="bag">Where the first word for a bag stands.</param>
    public static Reading? Read(List<string> words, int bag, string line)
    {
        var (codes, after, isNamed) = Codes(words, bag);
        var told = codes.Count < 2 ? null : BagLine.Whole(words, after);
        if ((told is not null || isNamed) && Range().IsMatch(line))
            return Note;
        if (told is not null)
            return told with { About = codes[0], Also = codes.Skip(1).ToValueList() };
        return isNamed && (codes.Count > 1 || after is ["to" or "till" or "through", ..]) ? Note : null;
    }

    private static Reading Note { get; } = new() { Kind = LineKind.Note };

    /// <returns>The bags, what follows them, and whether more than one is spoken of: the line says bags, or bag once more.</returns>
    private static (List<string> Codes, List<string> After, bool IsNamed) Codes(List<string> words, int bag)
    {
        var (codes, isNamed, isJoined, place) = (new List<string>(), words[bag] == "bags", false, bag + 1);
        for (var next = place; BagLine.Code(words, next) is { } code;)
        {
            codes.Add($"bag {code.Code}");
            next = place = next + code.Words;
            if (next < words.Count && words[next] is "and" or "plus")
                (isJoined, next) = (true, next + 1);
            if (next < words.Count && words[next] is "bag" or "bags")
                (isNamed, isJoined, next) = (true, true, next + 1);
        }

        var after = words.Skip(place).ToList();
        return (codes, after, isNamed && (isJoined || codes.Count < 2));
    }

    [GeneratedRegex(@"\d\s*[-–—]\s*\d")]
    private static partial Regex Range();
}
