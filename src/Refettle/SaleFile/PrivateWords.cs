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

    /// <summary>Digits after a plus, after a leading nought, or after a word such as "call": part numbers have as many.</summary>
    [GeneratedRegex(@"\+\d[\d ()/-]{6,}\d|(?<![\w.-])0\d(?:[ ()/-]?\d){7,}(?!\w)|\b(call|phone|ring|tel|text|mobile)\b\D{0,12}\d(?:[ ()/-]?\d){5,}", RegexOptions.IgnoreCase)]
    private static partial Regex Phone();

    [GeneratedRegex(@"\b\d+\w?\s+(\p{Lu}\w+\s+){1,3}(Street|St\.|Road|Rd\b|Lane|Avenue|Close|Drive)(?!\w)|\b\p{L}+(straße|strasse|gasse|weg|platz)\s+\d+|\b(Rue|rue|Via|via|Calle|calle)\s+(\p{Lu}\p{L}+\s+){1,3}\d+")]
    private static partial Regex Street();
}
