using System.Text.RegularExpressions;

namespace Refettle.SaleFile;

/// <summary>Words that promise more than a log can show.</summary>
/// <param name="Words">As they stand in the text.</param>
/// <param name="Offer">What can be said instead.</param>
public sealed record Overclaim(string Words, string Why, string Offer);

/// <summary>Finds absolute claims. What is written in a sale file can be held against the seller as a warranty; a belief that is
/// worded as one is fair to both.</summary>
/// <remarks>Common practice, no source for the list; it knows English only.</remarks>
public static partial class WordingGuard
{
    private const string Unseen = "Nobody has looked everywhere; one place is enough to make it false";
    private const string Judgement = "It is a judgement, and the buyer's may differ";
    private const string History = "This log knows only the time while it was kept";
    private const string NeedsEntry = "No entry is named that shows it";

    /// <summary>Whether entries could show it, the words, why they are too much, and what can be said.</summary>
    private static readonly (bool CanBeShown, Regex Words, string Why, string Offer)[] Rules =
    [
        Never(OverclaimWords.RustFree(), Unseen,
            "To the best of my knowledge there is no significant rust; the places opened and what was found there are listed with dates."),
        Never(OverclaimWords.Never(), History, "To the best of my knowledge … (say since when, and how you know)."),
        Never(OverclaimWords.AccidentFree(), History, "I know of no accident; I cannot speak for the time before me."),
        Never(OverclaimWords.Perfect(), Judgement, "Say what was measured or done, with the entries that show it."),
        Never(OverclaimWords.LikeNew(), Judgement, "Say which parts are new and which were refurbished; the table of parts shows it."),
        Never(OverclaimWords.Guaranteed(), "It promises something about the time to come",
            "Say what was done and when; promise nothing for the time to come."),
        Never(OverclaimWords.NothingToDo(), Unseen, "I know of no fault beyond those listed as open."),
        Never(OverclaimWords.Safe(), "An inspector decides that, in each place by other rules",
            "Give the date and result of the last roadworthiness test."),
        Never(OverclaimWords.GenuineMileage(), History, "The odometer shows … ; entries of this log have it since …"),
        Shown(OverclaimWords.FullyRestored(), "Say what was done and name the parts; what was not touched is listed too."),
        Shown(OverclaimWords.AllOriginal(),
            "No replacement is recorded while this log was kept; whether it is the one from the works is believed, not shown."),
        Shown(OverclaimWords.New(), "Name the part, and the entries that show it (--because)."),
        Shown(OverclaimWords.Every(), "Give the number of those that the log has, of how many."),
    ];

    /// <summary>All of a text, in the order in which they stand.</summary>
    /// <param name="isShown">Entries are named that show what is said.</param>
    public static ValueList<Overclaim> Of(string text, bool isShown)
    {
        var soft = Sentence().Matches(text).Where(sentence => Softened().IsMatch(sentence.Value)).ToList();
        bool IsSoft(Match match) =>
            soft.Exists(sentence => sentence.Index <= match.Index && match.Index < sentence.Index + sentence.Length);
        return Rules.Where(rule => !(isShown && rule.CanBeShown))
            .SelectMany(rule => rule.Words.Matches(text).Where(match => !IsSoft(match))
                .Select(match => (match.Index, match.Length, Claim: new Overclaim(match.Value, rule.Why, rule.Offer))))
            .OrderBy(found => found.Index).ThenByDescending(found => found.Length)
            .Aggregate(new List<(int Index, int Length, Overclaim Claim)>(), (kept, next) =>
            {
                if (kept.Count == 0 || next.Index >= kept[^1].Index + kept[^1].Length)
                    kept.Add(next);
                return kept;
            }).Select(found => found.Claim).ToValueList();
    }

    private static (bool, Regex, string, string) Never(Regex words, string why, string offer) => (false, words, why, offer);

    private static (bool, Regex, string, string) Shown(Regex words, string offer) => (true, words, NeedsEntry, offer);

    [GeneratedRegex(@"[^.!?;\n]+")]
    private static partial Regex Sentence();

    [GeneratedRegex(@"to the best of (my|our) knowledge|as far as (i|we) know|(i|we) believe|(i|we) know of no|is recorded|was recorded|are recorded", RegexOptions.IgnoreCase)]
    private static partial Regex Softened();
}
