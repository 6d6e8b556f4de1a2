using System.Text.RegularExpressions;

namespace Refettle.SaleFile;

/// <summary>Finds what looks private in a line of words. It is a net with holes: a name alone looks like any word, so the owner reads
/// the file before giving it away.</summary>
public static partial class PrivateWords
{
    public static bool LookLikeMoney(string text) => Money().IsMatch(text);

    public static bool LookLikePeople(string text) => Mail().IsMatch(text) || Phone().IsMatch(text) || Street().IsMatch(text);

    [GeneratedRegex(@"[€£$¥]\s?\d|\d\s?[€£$¥]|\b\d+([.,]\d+)?\s?(EUR|USD|GBP|CHF|SEK|NOK|DKK|PLN|JPY|CAD|AUD|euros?|pounds sterling|dollars?|quid|bucks|francs?)\b|\b(EUR|USD|GBP|CHF|SEK|NOK|DKK|PLN|JPY)\s?\d", RegexOptions.IgnoreCase)]
    private static partial Regex Money();

    [GeneratedRegex(@"[\w.+-]+@[\w-]+\.\w{2,}")]
    private static partial Regex Mail();

    /// <summary>Eight digits or more that belong together, or fewer after a plus.</summary>
    [GeneratedRegex(@"(?<![\w.])(\+\d[\d ()/-]{6,}\d|\d(?:[ ()/-]?\d){7,})(?!\w)")]
    private static partial Regex Phone();

    [GeneratedRegex(@"\b\d+\w?\s+(\w+\s+){1,3}(street|st\.|road|rd\.|lane|avenue|close|drive)(?!\w)|\b\p{L}+(straße|strasse|gasse|weg|platz)\s+\d+|\b(rue|via|calle)\s+(\p{L}+\s+){1,3}\d+", RegexOptions.IgnoreCase)]
    private static partial Regex Street();
}
